package railglow.supply;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The supply's words, as templates with {@code {volts}}, {@code {amperes}} and {@code {channel}}.
 *
 * @param prepare sent after every new connection, for example to take remote control
 * @param selectChannel sent before the words in every message; empty when the channel is part of
 *     each template or there is only one
 * @param outputQuery empty when the supply can't be asked
 * @param onReplies replies of the output query that mean on; any other recognised number or word
 *     means off only if it is in {@code offReplies}
 * @param voltsQuery reads the set voltage back; empty when it can't be
 * @param amperesQuery reads the current limit back; empty when it can't be
 * @param clearTrips empty when the supply has no such words
 * @param errorQuery empty when there is no error queue
 * @param sense empty when the supply senses where its wires or its front panel say
 */
public record SupplyCommands(
    String identify,
    List<String> prepare,
    Optional<String> selectChannel,
    String on,
    String off,
    Optional<String> outputQuery,
    Set<String> onReplies,
    Set<String> offReplies,
    String setVolts,
    Optional<String> voltsQuery,
    String setAmperes,
    Optional<String> amperesQuery,
    String measureVolts,
    String measureAmperes,
    Optional<String> clearTrips,
    Optional<String> errorQuery,
    Optional<SenseWords> sense) {
  public SupplyCommands {
    prepare = List.copyOf(prepare);
    onReplies = Set.copyOf(onReplies);
    offReplies = Set.copyOf(offReplies);
  }

  /** What moves the sensing there; empty where nothing is to be said or the words are not known. */
  Optional<String> senseAt(SensePoint point) {
    return switch (point) {
      case AS_WIRED -> Optional.empty();
      case TERMINALS -> sense.map(SenseWords::atTerminals);
      case BOARD -> sense.map(SenseWords::atBoard);
    };
  }
}
