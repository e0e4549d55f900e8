/**
 * What is the same and what differs between two runs: two injection points, before and after a
 * repair, or a known-good board.
 *
 * <p>Owns matching of heat sources by place, rises per watt and the significance of their
 * difference. Pure.
 *
 * <p>Must not know run folders or devices.
 */
package railglow.board.compare;
