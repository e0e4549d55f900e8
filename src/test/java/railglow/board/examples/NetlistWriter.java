package railglow.board.examples;

import java.util.List;
import java.util.Locale;
import railglow.board.Side;

/** Writes an IPC-D-356A netlist: fixed columns, 0.0001 inch. */
final class NetlistWriter {
  private static final double MILLIMETRES_PER_COUNT = 0.00254;

  private NetlistWriter() {}

  static String netlist(ExampleBoard board, int layers) {
    StringBuilder text = new StringBuilder();
    text.append("C  ").append(board.title()).append(' ').append(board.subtitle()).append('\n');
    text.append("P  JOB   ").append(board.title()).append('\n');
    text.append("P  UNITS CUST 0\n");
    for (ExamplePart part : board.parts()) {
      List<PadPlan.PadPlace> pads = PadPlan.of(part);
      for (int i = 0; i < pads.size(); i++) {
        String net = i < part.nets().size() ? part.nets().get(i) : "";
        text.append(record(part, i + 1, net, pads.get(i), layers)).append('\n');
      }
    }
    return text.append("999\n").toString();
  }

  private static String record(
      ExamplePart part, int pin, String net, PadPlan.PadPlace pad, int layers) {
    int access = pad.drilled() ? 0 : part.side() == Side.TOP ? 1 : layers;
    return record(
        pad.drilled() ? "317" : "327",
        net.isEmpty() ? "N/C" : net,
        part.reference(),
        Integer.toString(pin),
        access,
        pad);
  }

  static String record(
      String kind, String net, String reference, String pin, int access, PadPlan.PadPlace pad) {
    return String.format(
        Locale.ROOT,
        "%3s%-14s   %-6s%c%-4s%c%sA%02dX%+07dY%+07dX%04dY%04dR%03dS0",
        kind,
        net,
        reference,
        reference.equals("VIA") ? ' ' : '-',
        pin,
        ' ',
        pad.drilled() ? String.format(Locale.ROOT, "D%04dP", counts(pad.width() * 0.6)) : "      ",
        access,
        counts(pad.x()),
        counts(pad.y()),
        counts(pad.width()),
        pad.drilled() ? 0 : counts(pad.height()),
        ((int) Math.round(pad.rotation()) % 360 + 360) % 360);
  }

  private static int counts(double millimetres) {
    return (int) Math.round(millimetres / MILLIMETRES_PER_COUNT);
  }
}
