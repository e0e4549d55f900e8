package railglow.cli;

import railglow.run.ContactNotes;
import railglow.run.RunWatcher;

/**
 * The point that a run of a hands-free session is made at.
 *
 * @param label its name, which becomes a part of the run folder's
 * @param watcher watches the contact, before all others
 * @param contact notes the halves in which it is not held
 */
record TouchedPoint(String label, RunWatcher watcher, ContactNotes contact) {}
