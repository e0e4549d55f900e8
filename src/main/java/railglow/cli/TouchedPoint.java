package railglow.cli;

import railglow.run.RunWatcher;

/**
 * The point that a run of a hands-free session is made at.
 *
 * @param label its name, which becomes a part of the run folder's
 * @param watcher watches the contact, before all others
 */
record TouchedPoint(String label, RunWatcher watcher) {}
