package railglow.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A command header as manuals print it, such as {@code [SOURce:]VOLTage[:LEVel][:IMMediate]},
 * {@code OUTPut<n>[:STATe]?} or {@code *IDN?}. Square brackets hold nodes that may be left out;
 * {@code <n>} marks a node that may carry a number (1 when left out); a question mark at the end
 * makes it a query. Immutable.
 */
public final class HeaderPattern {
  private static final int MAX_FORMS = 256;

  private record Node(Mnemonic mnemonic, boolean numbered) {}

  private final String written;
  private final boolean common;
  private final boolean query;
  private final List<List<Node>> forms;

  private HeaderPattern(String written, boolean common, boolean query, List<List<Node>> forms) {
    this.written = written;
    this.common = common;
    this.query = query;
    this.forms = forms;
  }

  /**
   * @throws IllegalArgumentException if the text is not such a pattern
   */
  public static HeaderPattern of(String written) {
    boolean query = written.endsWith("?");
    String body = query ? written.substring(0, written.length() - 1) : written;
    boolean common = body.startsWith("*");
    List<List<Node>> forms = new ArrayList<>();
    forms.add(List.of());
    int at = common ? 1 : 0;
    while (at < body.length()) {
      boolean optional = body.charAt(at) == '[';
      int end = optional ? body.indexOf(']', at) : next(body, at);
      if (end < 0) {
        throw new IllegalArgumentException("'" + written + "' has a [ without ]");
      }
      List<Node> group = group(written, body.substring(optional ? at + 1 : at, end));
      List<List<Node>> longer = new ArrayList<>(optional ? forms : List.of());
      for (List<Node> form : forms) {
        List<Node> joined = new ArrayList<>(form);
        joined.addAll(group);
        longer.add(joined);
      }
      if (longer.size() > MAX_FORMS) {
        throw new IllegalArgumentException("'" + written + "' has too many optional nodes");
      }
      forms = longer;
      at = optional ? end + 1 : end;
    }
    forms.removeIf(List::isEmpty);
    if (forms.isEmpty() || common && (forms.size() > 1 || forms.get(0).size() > 1)) {
      throw new IllegalArgumentException("'" + written + "' is not a command header");
    }
    return new HeaderPattern(written, common, query, forms);
  }

  private static int next(String body, int at) {
    int bracket = body.indexOf('[', at);
    return bracket < 0 ? body.length() : bracket;
  }

  private static List<Node> group(String written, String text) {
    List<Node> nodes = new ArrayList<>();
    for (String part : text.split(":")) {
      if (!part.isEmpty()) {
        boolean numbered = part.endsWith("<n>");
        nodes.add(
            new Node(
                Mnemonic.of(numbered ? part.substring(0, part.length() - 3) : part), numbered));
      }
    }
    if (nodes.isEmpty()) {
      throw new IllegalArgumentException("'" + written + "' has an empty node");
    }
    return nodes;
  }

  public boolean isQuery() {
    return query;
  }

  /**
   * Compares with a received command.
   *
   * @return the numbers carried by the {@code <n>} nodes that were written, in order, 1 where left
   *     out; empty if the command is another one
   */
  public Optional<List<Integer>> match(Command command) {
    if (command.isCommon() != common || command.isQuery() != query) {
      return Optional.empty();
    }
    return forms.stream().flatMap(form -> match(form, command.header()).stream()).findFirst();
  }

  private static Optional<List<Integer>> match(List<Node> form, List<String> header) {
    if (form.size() != header.size()) {
      return Optional.empty();
    }
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < form.size(); i++) {
      Node node = form.get(i);
      String word = header.get(i);
      if (node.mnemonic().matches(word)) {
        if (node.numbered()) {
          numbers.add(1);
        }
        continue;
      }
      int digits = word.length();
      while (digits > 0 && Cursor.isDigit(word.charAt(digits - 1))) {
        digits--;
      }
      String number = word.substring(digits);
      if (!node.numbered()
          || number.isEmpty()
          || number.length() > 4
          || !node.mnemonic().matches(word.substring(0, digits))) {
        return Optional.empty();
      }
      numbers.add(Integer.parseInt(number));
    }
    return Optional.of(List.copyOf(numbers));
  }

  /** As it was written. */
  @Override
  public String toString() {
    return written;
  }
}
