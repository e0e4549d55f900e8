package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class EmbeddedCatalogueTest extends CatalogueContract {
  @Override
  Catalogue open(Path place) throws Exception {
    return Catalogue.besideRuns(place);
  }

  @Test
  void anAddressThatLeadsNowhereIsASentence() {
    CatalogueException e =
        assertThrows(
            CatalogueException.class,
            () -> Catalogue.open("jdbc:postgresql://127.0.0.1:1/railglow", "nobody", "x"));
    assertTrue(e.getMessage().startsWith("the catalogue at jdbc:postgresql://127.0.0.1:1/"));
    assertTrue(e.getMessage().contains("rebuilt"), e.getMessage());
  }
}
