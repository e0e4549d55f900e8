package railglow.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.FuzzTargets.Target;

/**
 * Every parser with good input cut and changed at random, and with each input that once broke it.
 * The same targets are fuzzed, guided by coverage, with the profile "fuzz".
 */
class ParsersKeepTheirWordTest {
  private static final int CHANGES = 60;

  static Stream<Target> targets() {
    return FuzzTargets.ALL.stream();
  }

  @ParameterizedTest
  @MethodSource("targets")
  void withGoodInputCutAnywhere(Target target) {
    target
        .seeds()
        .get()
        .forEach(
            seed -> {
              int step = Math.max(1, seed.length / 20);
              for (int length = 0; length <= seed.length; length += step) {
                target.check().accept(java.util.Arrays.copyOf(seed, length));
              }
            });
  }

  @ParameterizedTest
  @MethodSource("targets")
  void withGoodInputChangedAtRandom(Target target) {
    List<byte[]> seeds = target.seeds().get().toList();
    Random random = new Random(40);
    for (int i = 0; i < CHANGES; i++) {
      byte[] bytes = seeds.get(i % seeds.size());
      for (int change = 0; change <= random.nextInt(4); change++) {
        bytes = changed(bytes, seeds.get(random.nextInt(seeds.size())), random);
      }
      target.check().accept(bytes);
    }
  }

  @ParameterizedTest
  @MethodSource("targets")
  void withWhatOnceBrokeIt(Target target) throws IOException {
    Path inputs = Path.of("src/test/resources").resolve(inputsFolder(target));
    if (Files.isDirectory(inputs)) {
      try (Stream<Path> files = Files.walk(inputs)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          target.check().accept(Files.readAllBytes(file));
        }
      }
    }
  }

  @Test
  void everyFuzzClassIsInTheList() throws IOException {
    List<String> listed = new ArrayList<>();
    FuzzTargets.ALL.forEach(target -> listed.add(target + ".java"));
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      List<String> written =
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> name.endsWith("Fuzz.java"))
              .sorted()
              .toList();
      assertEquals(written, listed.stream().sorted().toList());
    }
  }

  static String inputsFolder(Target target) {
    return target.fuzz().getName().replace('.', '/') + "Inputs";
  }

  private static byte[] changed(byte[] from, byte[] other, Random random) {
    byte[] bytes = from.clone();
    if (bytes.length == 0) {
      return other;
    }
    int at = random.nextInt(bytes.length);
    switch (random.nextInt(5)) {
      case 0 -> bytes[at] = (byte) random.nextInt(256);
      case 1 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
      case 2 -> {
        // a run of bytes moves to another place
        int length = Math.min(random.nextInt(32), bytes.length - at);
        System.arraycopy(from, at, bytes, random.nextInt(bytes.length - length + 1), length);
      }
      case 3 -> {
        // the end of another seed in place of this one's
        int cut = random.nextInt(other.length + 1);
        byte[] joined = java.util.Arrays.copyOf(bytes, at + other.length - cut);
        System.arraycopy(other, cut, joined, at, other.length - cut);
        return joined;
      }
      default -> {
        // a digit becomes a large number
        byte[] nines = "99999999999999999999".getBytes();
        byte[] joined = java.util.Arrays.copyOf(bytes, bytes.length + nines.length);
        System.arraycopy(nines, 0, joined, at, nines.length);
        System.arraycopy(bytes, at, joined, at + nines.length, bytes.length - at);
        return joined;
      }
    }
    return bytes;
  }
}
