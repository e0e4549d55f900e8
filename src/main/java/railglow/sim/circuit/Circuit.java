package railglow.sim.circuit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Two nodes, the supply's terminals and the rail, joined by leads and contact; a capacitor at each;
 * branches from the rail to ground. Solved by backward Euler with a step that follows the change,
 * so it is stable at every step length.
 *
 * <p>Deterministic. Not thread-safe.
 */
public final class Circuit {
  private static final double LEAST_STEP_SECONDS = 2e-6;
  private static final double MOST_STEP_SECONDS = 1e-3;

  /** A change of the contact by more than this share is as good as a switch. */
  private static final double JUMP = 0.2;

  /** Above it nothing is touched. */
  private static final double OPEN_OHMS = 1e6;

  /** How far remote sensing may raise the terminals above the set voltage. */
  private static final double SENSE_HEADROOM_VOLTS = 1.0;

  private final CircuitSettings settings;
  private final List<LoadBranch> branches;
  private final Map<String, Double> joules = new LinkedHashMap<>();
  private double contactOhms;
  private String contactPlace;
  private double stubOhms;
  private boolean remoteSense;
  private final double[] drift;
  private double faultScale = 1;
  private double railFarads;
  private double terminalVolts;
  private double railVolts;
  private double outputAmperes;
  private double referenceVolts;
  private double stepSeconds = LEAST_STEP_SECONDS;
  private Mode mode = Mode.OFF;

  /** How the stage regulates at this moment. */
  public enum Mode {
    OFF,
    CONSTANT_VOLTAGE,
    CONSTANT_CURRENT,
    /** On, but sourcing nothing: the load holds the voltage above the target. */
    PULLED_UP
  }

  public Circuit(CircuitSettings settings) {
    this.settings = settings;
    branches = settings.branches();
    drift = new double[branches.size()];
    java.util.Arrays.fill(drift, 1);
    contactOhms = settings.contactOhms();
    contactPlace = settings.contactPlace();
    railFarads = settings.railFarads();
    remoteSense = settings.remoteSense();
  }

  public double terminalVolts() {
    return terminalVolts;
  }

  public double railVolts() {
    return railVolts;
  }

  /** Where the supply regulates and measures. */
  public double senseVolts() {
    return isSensedAtBoard() ? railVolts + outputAmperes * stubOhms : terminalVolts;
  }

  /** The sense wires meet the pad together with the leads, or hang in the air with them. */
  private boolean isSensedAtBoard() {
    return remoteSense && contactOhms < OPEN_OHMS;
  }

  public boolean isRemoteSense() {
    return remoteSense;
  }

  public void setRemoteSense(boolean wired) {
    if (wired != remoteSense) {
      remoteSense = wired;
      disturb();
    }
  }

  public double outputAmperes() {
    return outputAmperes;
  }

  public Mode mode() {
    return mode;
  }

  /** Next step starts short again: something was switched. */
  public void disturb() {
    stepSeconds = LEAST_STEP_SECONDS;
  }

  /** Where the leads meet the board and how well. */
  public void setContact(String place, double ohms) {
    double stub = settings.stubOhms().getOrDefault(place, 0.0);
    contactPlace = place;
    if (stub != stubOhms || Math.abs(ohms - contactOhms) > JUMP * Math.min(ohms, contactOhms)) {
      disturb();
    }
    contactOhms = ohms;
    stubOhms = stub;
  }

  /** Factor on the resistances of the branches that are the fault. */
  public void setFaultScale(double scale) {
    if (scale != faultScale) {
      faultScale = scale;
      disturb();
    }
  }

  /** How much warmer than the room each place is; resistances that drift follow. */
  public void warm(ToDoubleFunction<String> riseKelvin) {
    for (int i = 0; i < drift.length; i++) {
      LoadBranch branch = branches.get(i);
      if (branch.driftPerKelvin() != 0) {
        drift[i] = branch.driftFactor(riseKelvin.applyAsDouble(branch.place()));
      }
    }
  }

  /** Factor on the resistances of a branch now. */
  private double scale(int branch) {
    return drift[branch] * (branches.get(branch).fault() ? faultScale : 1);
  }

  public void setRailFarads(double farads) {
    if (farads != railFarads) {
      railFarads = farads;
      disturb();
    }
  }

  /** Heat since the last call, in joules by place; forgets it. */
  public Map<String, Double> takeJoules() {
    Map<String, Double> taken = new LinkedHashMap<>(joules);
    joules.replaceAll((place, heat) -> 0.0);
    return taken;
  }

  /** Power at one place at this moment, watts. */
  public double wattsAt(String place) {
    double watts = 0;
    for (int i = 0; i < drift.length; i++) {
      LoadBranch branch = branches.get(i);
      double scale = scale(i);
      double amperes = branch.amperesAt(railVolts, scale);
      for (HeatShare share : branch.series()) {
        watts += share.place().equals(place) ? amperes * amperes * share.ohms() * scale : 0;
      }
      if (branch.junction().isPresent() && branch.junction().get().place().equals(place)) {
        watts += amperes * branch.junction().get().voltsAt(amperes);
      }
    }
    return watts;
  }

  /**
   * Does one step, at most this long.
   *
   * @return how long it was, seconds
   */
  public double step(double mostSeconds, Drive drive) {
    double dt = Math.min(stepSeconds, mostSeconds);
    moveReference(drive, dt);
    double oldTerminal = terminalVolts;
    double oldRail = railVolts;
    solve(oldTerminal, oldRail, dt, drive);
    outputAmperes = (terminalVolts - railVolts) / seriesOhms();
    accumulateHeat(dt);
    double change =
        Math.max(Math.abs(terminalVolts - oldTerminal), Math.abs(railVolts - oldRail))
            / (Math.abs(railVolts) + Math.abs(terminalVolts) + 2e-3);
    if (change > 0.02) {
      stepSeconds = Math.max(LEAST_STEP_SECONDS, dt / 2);
    } else if (change < 0.002) {
      stepSeconds = Math.min(MOST_STEP_SECONDS, stepSeconds * 1.5);
    }
    return dt;
  }

  private double seriesOhms() {
    return settings.leadOhms() + contactOhms + stubOhms;
  }

  private void moveReference(Drive drive, double dt) {
    if (!drive.connected()) {
      referenceVolts = Math.max(0, senseVolts());
      return;
    }
    double most = settings.slewVoltsPerSecond() * dt;
    double miss = drive.targetVolts() - referenceVolts;
    referenceVolts += Math.max(-most, Math.min(most, miss));
  }

  private void solve(double oldTerminal, double oldRail, double dt, Drive drive) {
    if (!drive.connected()) {
      mode = Mode.OFF;
      forced(drive.strayAmperes(), drive.dischargeSiemens(), oldTerminal, oldRail, dt);
      return;
    }
    double wanted = regulated(oldTerminal, oldRail, dt);
    mode = Mode.CONSTANT_VOLTAGE;
    if (wanted > drive.limitAmperes()) {
      mode = Mode.CONSTANT_CURRENT;
      forced(drive.limitAmperes(), 0, oldTerminal, oldRail, dt);
    } else if (wanted < 0) {
      mode = Mode.PULLED_UP;
      forced(0, 0, oldTerminal, oldRail, dt);
    }
  }

  /**
   * The terminals (or the rail, with remote sense) at the reference; returns the current needed.
   */
  private double regulated(double oldTerminal, double oldRail, double dt) {
    double series = seriesOhms();
    terminalVolts = referenceVolts;
    if (isSensedAtBoard()) {
      double lost = amperesForSense(oldRail, dt) * (series - stubOhms);
      terminalVolts = referenceVolts + Math.min(SENSE_HEADROOM_VOLTS, Math.max(0, lost));
    }
    double rail = oldRail;
    for (int k = 0; k < 4; k++) {
      double load = loadAmperes(rail);
      double slope = loadSiemens(rail);
      rail =
          (railFarads / dt * oldRail + terminalVolts / series - load + slope * rail)
              / (railFarads / dt + 1 / series + slope);
    }
    railVolts = rail;
    return settings.outputFarads() / dt * (terminalVolts - oldTerminal)
        + (terminalVolts - rail) / series
        + terminalVolts / settings.bleedOhms();
  }

  /** What must flow for the pad, before its stub, to stand at the reference after this step. */
  private double amperesForSense(double oldRail, double dt) {
    double rail = referenceVolts;
    for (int k = 0; k < 4; k++) {
      double into = railFarads / dt * (rail - oldRail) + loadAmperes(rail);
      double slope = railFarads / dt + loadSiemens(rail);
      rail -= (rail + stubOhms * into - referenceVolts) / (1 + stubOhms * slope);
    }
    return railFarads / dt * (rail - oldRail) + loadAmperes(rail);
  }

  /** Both nodes free, with a given current into the terminals. */
  private void forced(
      double amperes, double extraSiemens, double oldTerminal, double oldRail, double dt) {
    double link = 1 / seriesOhms();
    double output = settings.outputFarads() / dt;
    double rail = railFarads / dt;
    double a = output + link + 1 / settings.bleedOhms() + extraSiemens;
    double guess = oldRail;
    for (int k = 0; k < 4; k++) {
      double load = loadAmperes(guess);
      double slope = loadSiemens(guess);
      double d = rail + link + slope;
      double p = output * oldTerminal + amperes;
      double q = rail * oldRail - load + slope * guess;
      double determinant = a * d - link * link;
      terminalVolts = (p * d + link * q) / determinant;
      guess = (a * q + link * p) / determinant;
    }
    railVolts = guess;
  }

  private double loadAmperes(double volts) {
    double sum = 0;
    for (int i = 0; i < drift.length; i++) {
      sum += branches.get(i).amperesAt(volts, scale(i));
    }
    return sum;
  }

  private double loadSiemens(double volts) {
    double sum = 0;
    for (int i = 0; i < drift.length; i++) {
      LoadBranch branch = branches.get(i);
      double scale = scale(i);
      sum += branch.conductanceAt(branch.amperesAt(volts, scale), scale);
    }
    return sum;
  }

  private void accumulateHeat(double dt) {
    for (int i = 0; i < drift.length; i++) {
      LoadBranch branch = branches.get(i);
      double scale = scale(i);
      double amperes = branch.amperesAt(railVolts, scale);
      for (HeatShare share : branch.series()) {
        add(share.place(), amperes * amperes * share.ohms() * scale * dt);
      }
      if (branch.junction().isPresent()) {
        Junction junction = branch.junction().get();
        add(junction.place(), amperes * junction.voltsAt(amperes) * dt);
      }
    }
    add(contactPlace, outputAmperes * outputAmperes * (contactOhms + stubOhms) * dt);
  }

  private void add(String place, double heat) {
    joules.merge(place, heat, Double::sum);
  }
}
