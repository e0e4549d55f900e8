package railglow.cli;

import java.util.Locale;
import picocli.CommandLine.Option;
import railglow.report.RunReport;

/** The language of reports. */
final class LanguageOption {
  @Option(
      names = "--language",
      paramLabel = "TAG",
      description = "of the reports, for example 'en' (default); a language needs its texts")
  private String tag = "en";

  /**
   * Its locale.
   *
   * @throws UserMistake saying what can be done when there are no texts for it
   */
  Locale locale() throws UserMistake {
    try {
      return RunReport.language(tag);
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--language: " + e.getMessage());
    }
  }
}
