package railglow.supply;

import java.util.Locale;
import java.util.Set;
import railglow.scpi.ErrorEntry;
import railglow.scpi.ReplyItem;
import railglow.scpi.ScpiException;

/**
 * What replies mean by the descriptor. Every reply gives a value or a {@link SupplyException} that
 * shows question and answer. Pure.
 */
final class SupplyReplies {
  private final Set<String> onReplies;
  private final Set<String> offReplies;

  SupplyReplies(SupplyCommands commands) {
    onReplies = commands.onReplies();
    offReplies = commands.offReplies();
  }

  SwitchState outputSwitch(String question, ReplyItem item) throws SupplyException {
    String text = item.text().strip().toUpperCase(Locale.ROOT);
    if (onReplies.contains(text)) {
      return SwitchState.ON;
    }
    if (offReplies.contains(text)) {
      return SwitchState.OFF;
    }
    throw notUnderstood(question, text, "that is neither on nor off");
  }

  /** NaN and infinities are values here: the judge makes a breach of them. */
  double number(String question, ReplyItem item, String unit) throws SupplyException {
    try {
      return item.number(unit);
    } catch (ScpiException e) {
      throw notUnderstood(question, item.text(), e.getMessage());
    }
  }

  void status(StatusQuery query, ReplyItem item, ReadingDraft draft) throws SupplyException {
    if (!query.words().isEmpty()) {
      StatusMeaning meaning = query.words().get(item.text().strip().toUpperCase(Locale.ROOT));
      if (meaning != null) {
        draft.status(meaning);
      }
      return;
    }
    try {
      int register = item.integer(0, 65535);
      query
          .bits()
          .forEach(
              (bit, meaning) -> {
                if ((register >> bit & 1) != 0) {
                  draft.status(meaning);
                }
              });
    } catch (ScpiException e) {
      throw notUnderstood(query.query(), item.text(), e.getMessage());
    }
  }

  static ErrorEntry error(String question, String reply) throws SupplyException {
    try {
      return ErrorEntry.parse(reply);
    } catch (ScpiException e) {
      throw notUnderstood(question, reply, e.getMessage());
    }
  }

  static SupplyException notUnderstood(String question, String reply, String why) {
    String shown = reply.length() > 80 ? reply.substring(0, 80) + "..." : reply;
    return new SupplyException(
        SupplyException.Kind.NOT_UNDERSTOOD,
        "the supply answered '" + shown + "' to '" + question + "': " + why);
  }
}
