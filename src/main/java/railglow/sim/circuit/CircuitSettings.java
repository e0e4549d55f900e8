package railglow.sim.circuit;

import java.util.List;
import java.util.Map;

/**
 * The fixed part of the electrical bench.
 *
 * @param leadOhms both leads together
 * @param contactOhms of the clips or the probe when pressed well
 * @param contactPlace the part beside which the contact's heat goes into the board
 * @param outputFarads inside the supply
 * @param bleedOhms inside the supply, always there
 * @param railFarads on the board
 * @param slewVoltsPerSecond how fast the supply's voltage moves
 * @param remoteSense whether voltage is regulated and measured at the board, by wires that meet the
 *     same pad as the leads; without contact they show the terminals' voltage
 * @param branches from the rail to ground
 * @param stubOhms copper from a point's pad to the rail's trunk, where all branches hang; 0 for
 *     points that are not named
 */
public record CircuitSettings(
    double leadOhms,
    double contactOhms,
    String contactPlace,
    double outputFarads,
    double bleedOhms,
    double railFarads,
    double slewVoltsPerSecond,
    boolean remoteSense,
    List<LoadBranch> branches,
    Map<String, Double> stubOhms) {
  public CircuitSettings {
    branches = List.copyOf(branches);
    stubOhms = Map.copyOf(stubOhms);
  }

  /** A rail that is met everywhere without copper on the way. */
  public CircuitSettings(
      double leadOhms,
      double contactOhms,
      String contactPlace,
      double outputFarads,
      double bleedOhms,
      double railFarads,
      double slewVoltsPerSecond,
      boolean remoteSense,
      List<LoadBranch> branches) {
    this(
        leadOhms,
        contactOhms,
        contactPlace,
        outputFarads,
        bleedOhms,
        railFarads,
        slewVoltsPerSecond,
        remoteSense,
        branches,
        Map.of());
  }

  public CircuitSettings withStubOhms(Map<String, Double> newStubOhms) {
    return new CircuitSettings(
        leadOhms,
        contactOhms,
        contactPlace,
        outputFarads,
        bleedOhms,
        railFarads,
        slewVoltsPerSecond,
        remoteSense,
        branches,
        newStubOhms);
  }

  public CircuitSettings withBranches(List<LoadBranch> newBranches) {
    return new CircuitSettings(
        leadOhms,
        contactOhms,
        contactPlace,
        outputFarads,
        bleedOhms,
        railFarads,
        slewVoltsPerSecond,
        remoteSense,
        newBranches,
        stubOhms);
  }

  public CircuitSettings withRailFarads(double farads) {
    return new CircuitSettings(
        leadOhms,
        contactOhms,
        contactPlace,
        outputFarads,
        bleedOhms,
        farads,
        slewVoltsPerSecond,
        remoteSense,
        branches,
        stubOhms);
  }

  public CircuitSettings withRemoteSense(boolean wired) {
    return new CircuitSettings(
        leadOhms,
        contactOhms,
        contactPlace,
        outputFarads,
        bleedOhms,
        railFarads,
        slewVoltsPerSecond,
        wired,
        branches,
        stubOhms);
  }
}
