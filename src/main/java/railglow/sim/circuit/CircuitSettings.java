package railglow.sim.circuit;

import java.util.List;

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
 * @param remoteSense whether voltage is regulated and measured at the board
 * @param branches from the rail to ground
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
    List<LoadBranch> branches) {
  public CircuitSettings {
    branches = List.copyOf(branches);
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
        newBranches);
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
        branches);
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
        branches);
  }
}
