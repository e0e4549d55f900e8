package railglow.scpi;

/**
 * The answer to {@code *IDN?} (IEEE 488.2, 10.14). Any text gives an identity: fields that are
 * missing are empty, more than four are kept in the last.
 *
 * @param text the whole answer, stripped
 */
public record Identity(String maker, String model, String serial, String firmware, String text) {

  public static Identity parse(String reply) {
    String text = reply.strip();
    String[] fields = text.split(",", 4);
    return new Identity(
        field(fields, 0), field(fields, 1), field(fields, 2), field(fields, 3), text);
  }

  private static String field(String[] fields, int index) {
    return index < fields.length ? fields[index].strip() : "";
  }
}
