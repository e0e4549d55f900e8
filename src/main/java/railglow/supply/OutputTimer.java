package railglow.supply;

import java.util.Optional;
import railglow.units.Interval;

/**
 * The supply's own watchdog or timed output: it goes off by itself unless told again.
 *
 * @param arm template with {@code {seconds}}; sent once before the first pulse
 * @param feed sent at least twice per time while the output is on; the same as {@code arm} where
 *     arming again restarts the time
 * @param disarm sent after the output is proven off
 * @param seconds range of the time
 * @param anyCommandFeeds whether every exchange restarts the time, so that feeding needs no words
 */
public record OutputTimer(
    String arm,
    Optional<String> feed,
    Optional<String> disarm,
    Interval seconds,
    boolean anyCommandFeeds) {}
