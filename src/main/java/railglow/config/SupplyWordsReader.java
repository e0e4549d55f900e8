package railglow.config;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.supply.SenseWords;
import railglow.supply.StatusMeaning;
import railglow.supply.StatusQuery;
import railglow.supply.SupplyCommands;
import railglow.supply.SupplyDescriptor;

/** Reads the templates of a supply descriptor. */
final class SupplyWordsReader {
  private static final Pattern PLACEHOLDER = Pattern.compile("\\{[^}]*\\}?");
  private static final int MAX_TEMPLATE = 200;
  private final int channels;

  SupplyWordsReader(int channels) {
    this.channels = channels;
  }

  SupplyCommands commands(ConfigSection section) {
    Set<String> on = replies(section, "on-replies", List.of("1", "ON"));
    Set<String> off = replies(section, "off-replies", List.of("0", "OFF"));
    if (on.stream().anyMatch(off::contains)) {
      section.report("on-replies", "and 'off-replies' share a word");
    }
    return new SupplyCommands(
        template(section, "identify", ""),
        preparing(section),
        optionalTemplate(section, "select-channel"),
        template(section, "output-on", ""),
        template(section, "output-off", ""),
        optionalTemplate(section, "output-query"),
        on,
        off,
        template(section, "set-voltage", "{volts}"),
        optionalTemplate(section, "voltage-query"),
        template(section, "set-current", "{amperes}"),
        optionalTemplate(section, "current-query"),
        template(section, "measure-voltage", ""),
        template(section, "measure-current", ""),
        optionalTemplate(section, "clear-trips"),
        optionalTemplate(section, "error-query"),
        sense(section));
  }

  private static Optional<SenseWords> sense(ConfigSection section) {
    Optional<String> terminals = optionalTemplate(section, "sense-at-terminals");
    Optional<String> board = optionalTemplate(section, "sense-at-board");
    if (terminals.isPresent() != board.isPresent()) {
      section.report(
          terminals.isPresent() ? "sense-at-terminals" : "sense-at-board",
          "needs the other of 'sense-at-terminals' and 'sense-at-board' beside it");
    }
    return terminals.flatMap(t -> board.map(b -> new SenseWords(t, b)));
  }

  private static List<String> preparing(ConfigSection section) {
    List<String> all = section.texts("prepare");
    all.forEach(words -> check(section, "prepare", words, ""));
    return all;
  }

  List<StatusQuery> status(ConfigSection root) {
    return root.sections("status").stream()
        .map(
            section -> {
              Map<Integer, StatusMeaning> bits = new HashMap<>();
              for (ConfigSection bit : section.sections("bits")) {
                int number = bit.integer("bit", 0, 15);
                if (bits.put(number, bit.choice("means", StatusMeaning.class)) != null) {
                  bit.report("bit", number + " is given twice");
                }
              }
              Map<String, StatusMeaning> words = new HashMap<>();
              for (ConfigSection word : section.sections("words")) {
                words.put(
                    word.text("reply").strip().toUpperCase(Locale.ROOT),
                    word.choice("means", StatusMeaning.class));
              }
              if (bits.isEmpty() == words.isEmpty()) {
                section.report("query", "needs either 'bits' or 'words'");
              }
              return new StatusQuery(template(section, "query", ""), bits, words);
            })
        .toList();
  }

  /** With more than one channel, every word that acts must say which one it means. */
  void checkChannels(ConfigSection root, SupplyDescriptor descriptor) {
    if (channels < 2 || descriptor.commands().selectChannel().isPresent()) {
      return;
    }
    SupplyCommands commands = descriptor.commands();
    for (String words :
        List.of(
            commands.on(),
            commands.off(),
            commands.setVolts(),
            commands.setAmperes(),
            commands.measureVolts(),
            commands.measureAmperes())) {
      if (!words.contains("{channel}")) {
        root.report(
            "channels",
            "lists "
                + channels
                + " channels, but '"
                + words
                + "' does not say which one: put {channel} into it or give 'select-channel'");
      }
    }
  }

  static String template(ConfigSection section, String key, String placeholder) {
    String text = section.text(key);
    check(section, key, text, placeholder);
    return text;
  }

  static Optional<String> optionalTemplate(ConfigSection section, String key) {
    Optional<String> text = section.optionalText(key);
    text.ifPresent(t -> check(section, key, t, ""));
    return text;
  }

  private static void check(ConfigSection section, String key, String text, String placeholder) {
    if (text.length() > MAX_TEMPLATE) {
      section.report(key, "is longer than " + MAX_TEMPLATE + " characters");
    }
    if (text.chars().anyMatch(c -> c < ' ' || c > '~')) {
      section.report(key, "may hold printable ASCII characters only");
    }
    if (!text.isEmpty() && !text.contains(placeholder)) {
      section.report(key, "must hold " + placeholder);
    }
    Matcher matcher = PLACEHOLDER.matcher(text);
    while (matcher.find()) {
      if (!matcher.group().equals(placeholder) && !matcher.group().equals("{channel}")) {
        section.report(key, "holds " + matcher.group() + ", which is not known here");
      }
    }
  }

  private static Set<String> replies(ConfigSection section, String key, List<String> usual) {
    Set<String> words = new HashSet<>();
    for (String word : section.has(key) ? section.texts(key) : usual) {
      words.add(word.strip().toUpperCase(Locale.ROOT));
    }
    return words;
  }
}
