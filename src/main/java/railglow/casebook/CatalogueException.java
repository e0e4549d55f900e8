package railglow.casebook;

/** A catalogue that can't be used; the message is a sentence for the operator. */
public final class CatalogueException extends Exception {
  public CatalogueException(String message, Throwable cause) {
    super(message, cause);
  }
}
