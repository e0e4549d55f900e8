package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;
import railglow.supply.SupplyDescriptor;

/**
 * The supplies that are described: by the files that come with the program, or by one the user
 * gives.
 */
final class KnownSupplies {
  /** A descriptor and where it was read. */
  record Known(Path file, SupplyDescriptor descriptor) {}

  private final List<Known> all;

  private KnownSupplies(List<Known> all) {
    this.all = List.copyOf(all);
  }

  /** Those that come with the program; one that can't be read is complained of and left out. */
  static KnownSupplies shipped(Terminal terminal) throws UserMistake, IOException {
    List<Known> known = new ArrayList<>();
    Path folder = ShippedFiles.find("bench-simulated", "instruments", "bench file").getParent();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : (Iterable<Path>) files.sorted()::iterator) {
        if (file.getFileName().toString().startsWith("supply-")) {
          try {
            known.add(new Known(file, SupplyDescriptorFile.read(file)));
          } catch (ConfigException e) {
            terminal.complain(e.getMessage());
          }
        }
      }
    }
    return new KnownSupplies(known);
  }

  /** The one of a file, or of a shipped file's name. */
  static KnownSupplies of(String given) throws UserMistake, ConfigException {
    Path file = ShippedFiles.find(given, "instruments", "descriptor of a supply");
    return new KnownSupplies(List.of(new Known(file, SupplyDescriptorFile.read(file))));
  }

  List<SupplyDescriptor> descriptors() {
    return all.stream().map(Known::descriptor).toList();
  }

  Path fileOf(SupplyDescriptor descriptor) {
    return all.stream()
        .filter(known -> known.descriptor().equals(descriptor))
        .findFirst()
        .orElseThrow()
        .file();
  }
}
