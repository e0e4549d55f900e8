package railglow.process;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** How a test begins another Java: the one it runs in itself, with the same classes. */
public final class ChildJava {
  public static final String PROGRAM =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();

  private ChildJava() {}

  /**
   * The words of the command.
   *
   * @param options for Java itself
   * @param words the main class and its arguments
   */
  public static List<String> command(List<String> options, List<String> words) {
    List<String> command = new ArrayList<>();
    command.add(PROGRAM);
    command.addAll(options);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(words);
    return command;
  }

  /** The same for a main class of the tests. */
  public static ProcessBuilder of(List<String> options, Class<?> main, String... arguments) {
    List<String> words = new ArrayList<>(List.of(main.getName()));
    words.addAll(List.of(arguments));
    return new ProcessBuilder(command(options, words));
  }
}
