package railglow.config;

import java.nio.file.Path;

/**
 * One thing wrong with a user's file.
 *
 * @param line from 1; 0 when the file as a whole is meant
 * @param message what was wrong, with the allowed range and what to write instead
 */
public record ConfigProblem(Path file, int line, String message) {
  @Override
  public String toString() {
    return line > 0 ? file + ":" + line + ": " + message : file + ": " + message;
  }
}
