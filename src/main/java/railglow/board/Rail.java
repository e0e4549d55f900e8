package railglow.board;

import java.util.Optional;
import railglow.units.Interval;

/**
 * A supply net of the board.
 *
 * @param name as on the schematic, also the net's name in the netlist
 * @param nominalVolts NaN when not known
 * @param highestInjectionVolts the most the board file allows to inject; NaN when it says nothing
 * @param normalOhms what a good board of this type reads to ground
 */
public record Rail(
    String name,
    double nominalVolts,
    double highestInjectionVolts,
    Optional<Interval> normalOhms) {}
