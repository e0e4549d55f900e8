package railglow.scpi;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Whatever bytes an instrument or a controller sends, as replies and as program messages. */
@Tag("fuzz")
public class ScpiFuzz {
  private static final HeaderTable<String> TABLE =
      new HeaderTable<String>()
          .add("*IDN?", "identity")
          .add("[SOURce<n>:]VOLTage[:LEVel][:IMMediate][:AMPLitude]", "level")
          .add("OUTPut<n>[:STATe]?", "state");

  private interface Accessor<T> {
    Object read(T from) throws ScpiException;
  }

  public static Stream<byte[]> seeds() {
    return Stream.of(
            "1.5;+3.00E-1;CV,\"a;b\",#13x;y",
            "SOUR2:VOLT:LEV 5 MA;PROT? #H2F,(@1);*IDN?",
            "-113,\"Undefined header;VOLX\"",
            "9.91E37,NAN,#B101")
        .map(text -> text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void messages(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> everythingThatReads(new String(bytes, StandardCharsets.ISO_8859_1)));
  }

  static void everythingThatReads(String text) {
    readOrRefuse(text, ErrorEntry::parse);
    Identity.parse(text);
    ProgramMessage message = ProgramMessage.parse(text);
    for (Command command : message.commands()) {
      readOrRefuse(command, TABLE::find);
      for (Argument argument : command.arguments()) {
        readArgument(argument);
      }
    }
    try {
      ScpiReply.parse(text).answers().forEach(items -> items.forEach(ScpiFuzz::readItem));
    } catch (ScpiException e) {
      inside(text, e);
    }
    readOrRefuse(text, ScpiReply::number);
  }

  private static void readArgument(Argument argument) {
    List<Accessor<Argument>> accessors =
        List.of(
            Argument::number,
            a -> a.number("V"),
            a -> a.number("A"),
            a -> a.integer(0, 255),
            Argument::bool,
            Argument::word,
            Argument::string,
            Argument::block,
            Argument::expression);
    accessors.forEach(accessor -> readOrRefuse(argument, accessor));
  }

  private static void readItem(ReplyItem item) {
    List<Accessor<ReplyItem>> accessors =
        List.of(
            ReplyItem::number,
            i -> i.number("V"),
            i -> i.integer(0, 65535),
            ReplyItem::bool,
            ReplyItem::word,
            ReplyItem::string,
            ReplyItem::block);
    accessors.forEach(accessor -> readOrRefuse(item, accessor));
  }

  private static <T> void readOrRefuse(T from, Accessor<T> accessor) {
    try {
      if (accessor.read(from) == null) {
        throw new AssertionError("read nothing");
      }
    } catch (ScpiException e) {
      if (e.getMessage().isBlank()) {
        throw new AssertionError("an error without a message", e);
      }
    }
  }

  private static void inside(String text, ScpiException e) {
    if (e.position() < 0 || e.position() > text.length()) {
      throw new AssertionError("position outside the text", e);
    }
  }
}
