package railglow.report;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.ClasspathLoader;
import java.io.IOException;
import java.io.StringWriter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Pages filled in from their templates; every value is escaped, a missing one is an error. */
final class Templates {
  private final PebbleEngine pages;

  Templates() {
    ClasspathLoader loader = new ClasspathLoader(Templates.class.getClassLoader());
    loader.setPrefix("railglow/report");
    loader.setSuffix(".html");
    pages =
        new PebbleEngine.Builder()
            .loader(loader)
            .autoEscaping(true)
            .strictVariables(true)
            .defaultLocale(Locale.ROOT)
            .build();
  }

  String fill(String template, Map<String, Object> values) throws IOException {
    StringWriter out = new StringWriter();
    pages.getTemplate(template).evaluate(out, new HashMap<>(values));
    return out.toString();
  }
}
