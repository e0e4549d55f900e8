package railglow.report;

import java.text.MessageFormat;
import java.util.AbstractMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * Every sentence of a report, in one place: {@code railglow/report/texts.properties} and its
 * translations. A text that is not there is an error, never a blank. Immutable.
 */
final class Texts {
  private final ResourceBundle bundle;
  private final Locale locale;

  Texts(Locale locale) {
    this.locale = locale;
    bundle =
        ResourceBundle.getBundle(
            "railglow.report.texts",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** Whether there are texts for a language; English always. */
  static boolean has(Locale locale) {
    return locale.getLanguage().equals("en")
        || !locale.getLanguage().isEmpty()
            && Texts.class.getResource("texts_" + locale.getLanguage() + ".properties") != null;
  }

  /** As a page names it. */
  String language() {
    return locale.toLanguageTag();
  }

  String get(String key) {
    return bundle.getString(key);
  }

  /** A text with {0}, {1} … filled in; numbers come as text already. */
  String get(String key, Object... values) {
    return new MessageFormat(bundle.getString(key), locale).format(values);
  }

  /** A text, or another where there is none. */
  String getOr(String key, String otherwise) {
    return bundle.containsKey(key) ? bundle.getString(key) : otherwise;
  }

  /** All plain texts, for a template. */
  Map<String, String> all() {
    return new AbstractMap<>() {
      @Override
      public Set<Entry<String, String>> entrySet() {
        Set<Entry<String, String>> entries = new LinkedHashSet<>();
        for (String key : bundle.keySet()) {
          entries.add(Map.entry(key, bundle.getString(key)));
        }
        return entries;
      }

      @Override
      public String get(Object key) {
        return bundle.getString((String) key);
      }
    };
  }
}
