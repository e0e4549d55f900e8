package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railglow.link.Link;
import railglow.link.ReadyMessage;
import railglow.scpi.ErrorEntry;
import railglow.scpi.ReplyItem;

/** A supply that is told what its descriptor says, over any link. */
public final class ScpiSupply implements Supply {
  /** One question of a reading. */
  private record Look(String question, Taker taker) {}

  private interface Taker {
    void take(ReplyItem item, ReadingDraft draft) throws SupplyException;
  }

  private final SupplyTalk talk;
  private final SupplyDescriptor descriptor;
  private final SupplyCommands commands;
  private final SupplyReplies replies;
  private final int channel;
  private final String off;
  private final String on;
  private final Optional<String> outputQuery;
  private final ReadyMessage readyOff;
  private final List<Look> looks;
  private final List<String> wholeReading;

  private ScpiSupply(Link link, SupplyDescriptor descriptor, int channel) {
    descriptor.channel(channel);
    this.talk = new SupplyTalk(link, descriptor, channel);
    this.descriptor = descriptor;
    this.commands = descriptor.commands();
    this.replies = new SupplyReplies(commands);
    this.channel = channel;
    this.off = SupplyWords.filled(commands.off(), channel);
    this.on = SupplyWords.filled(commands.on(), channel);
    this.outputQuery = commands.outputQuery().map(t -> SupplyWords.filled(t, channel));
    this.readyOff = talk.ready(off);
    this.looks = looks();
    this.wholeReading = looks.stream().map(Look::question).toList();
  }

  /**
   * Opens the link and makes sure that the descriptor's supply answers there. The output is not
   * touched, except that off is sent when something else answers.
   *
   * @throws SupplyException of the kind {@code WRONG_SUPPLY} with what answered
   * @throws IllegalArgumentException if the descriptor has no such channel
   */
  public static ScpiSupply connect(Link link, SupplyDescriptor descriptor, int channel)
      throws SupplyException {
    ScpiSupply supply = opened(link, descriptor, channel, true);
    supply.prepare();
    return supply;
  }

  /** For a supply that somebody else drives: as {@link #connect}, but only questions are sent. */
  public static ScpiSupply watch(Link link, SupplyDescriptor descriptor, int channel)
      throws SupplyException {
    return opened(link, descriptor, channel, false);
  }

  private static ScpiSupply opened(
      Link link, SupplyDescriptor descriptor, int channel, boolean mayTell) throws SupplyException {
    ScpiSupply supply = new ScpiSupply(link, descriptor, channel);
    supply.talk.reopen();
    String identity = supply.identify();
    if (descriptor.identity().isFoundIn(identity)) {
      return supply;
    }
    if (mayTell) {
      supply.talk.tell(supply.off);
    }
    throw new SupplyException(
        SupplyException.Kind.WRONG_SUPPLY,
        link.description()
            + " answers '"
            + identity
            + "', which the descriptor "
            + descriptor.name()
            + " does not know; give the right address or descriptor. "
            + (mayTell ? "Only off was sent to it" : "Nothing was changed there"));
  }

  /** Brings the link back in step by questions alone. */
  void rejoin() throws SupplyException {
    talk.reopen();
  }

  /** For who may have to switch off later and must not touch the supply before that. */
  static ScpiSupply unopened(Link link, SupplyDescriptor descriptor, int channel) {
    return new ScpiSupply(link, descriptor, channel);
  }

  private void prepare() throws SupplyException {
    for (String words : commands.prepare()) {
      talk.tell(SupplyWords.filled(words, channel));
    }
  }

  private List<Look> looks() {
    List<Look> all = new ArrayList<>();
    String volts = SupplyWords.filled(commands.measureVolts(), channel);
    String amperes = SupplyWords.filled(commands.measureAmperes(), channel);
    all.add(new Look(volts, (item, draft) -> draft.volts(replies.number(volts, item, "V"))));
    all.add(new Look(amperes, (item, draft) -> draft.amperes(replies.number(amperes, item, "A"))));
    outputQuery.ifPresent(
        query ->
            all.add(
                new Look(
                    query,
                    (item, draft) -> draft.outputSwitch(replies.outputSwitch(query, item)))));
    for (StatusQuery status : descriptor.status()) {
      String query = SupplyWords.filled(status.query(), channel);
      all.add(new Look(query, (item, draft) -> replies.status(status, item, draft)));
    }
    return List.copyOf(all);
  }

  @Override
  public SupplyDescriptor descriptor() {
    return descriptor;
  }

  @Override
  public int channel() {
    return channel;
  }

  @Override
  public String identify() throws SupplyException {
    return talk.askInstrument(commands.identify()).strip();
  }

  @Override
  public SwitchState switchOff() throws SupplyException {
    if (talk.isOutOfStep()) {
      talk.tell(off);
      return SwitchState.NOT_TOLD;
    }
    return switched(off);
  }

  @Override
  public boolean offWithoutMemory() {
    return talk.tellWithoutMemory(readyOff);
  }

  @Override
  public SwitchState switchOn() throws SupplyException {
    return switched(on);
  }

  private SwitchState switched(String words) throws SupplyException {
    if (talk.compound() && outputQuery.isPresent()) {
      return outputSwitch(List.of(words, outputQuery.get()));
    }
    talk.tell(words);
    return SwitchState.NOT_TOLD;
  }

  @Override
  public SwitchState readSwitch() throws SupplyException {
    return outputQuery.isPresent()
        ? outputSwitch(List.of(outputQuery.get()))
        : SwitchState.NOT_TOLD;
  }

  private SwitchState outputSwitch(List<String> words) throws SupplyException {
    return talk.ask(words, 1, items -> replies.outputSwitch(outputQuery.get(), items.get(0)));
  }

  @Override
  public void senseAt(SensePoint point) throws SupplyException {
    tellIfKnown(commands.senseAt(point));
  }

  @Override
  public void setVolts(double volts) throws SupplyException {
    talk.tell(SupplyWords.filled(commands.setVolts(), "volts", volts, channel));
  }

  @Override
  public OptionalDouble voltsSetting() throws SupplyException {
    return setting(commands.voltsQuery(), "V");
  }

  @Override
  public void setAmperes(double amperes) throws SupplyException {
    talk.tell(SupplyWords.filled(commands.setAmperes(), "amperes", amperes, channel));
  }

  @Override
  public OptionalDouble amperesSetting() throws SupplyException {
    return setting(commands.amperesQuery(), "A");
  }

  @Override
  public void setOverVoltage(double volts) throws SupplyException {
    setProtection(descriptor.overVoltage(), "volts", volts);
  }

  @Override
  public OptionalDouble overVoltageSetting() throws SupplyException {
    return setting(descriptor.overVoltage().flatMap(ProtectionLevel::query), "V");
  }

  @Override
  public void setOverCurrent(double amperes) throws SupplyException {
    setProtection(descriptor.overCurrent(), "amperes", amperes);
  }

  @Override
  public OptionalDouble overCurrentSetting() throws SupplyException {
    return setting(descriptor.overCurrent().flatMap(ProtectionLevel::query), "A");
  }

  private void setProtection(Optional<ProtectionLevel> level, String name, double value)
      throws SupplyException {
    if (level.isPresent()) {
      talk.tell(SupplyWords.filled(level.get().set(), name, value, channel));
      tellIfKnown(level.get().enable());
    }
  }

  private OptionalDouble setting(Optional<String> template, String unit) throws SupplyException {
    if (template.isEmpty()) {
      return OptionalDouble.empty();
    }
    String question = SupplyWords.filled(template.get(), channel);
    return OptionalDouble.of(
        talk.ask(List.of(question), 1, items -> replies.number(question, items.get(0), unit)));
  }

  @Override
  public void clearTrips() throws SupplyException {
    tellIfKnown(commands.clearTrips());
  }

  @Override
  public Optional<String> nextError() throws SupplyException {
    if (commands.errorQuery().isEmpty()) {
      return Optional.empty();
    }
    String question = commands.errorQuery().get();
    String reply = talk.askInstrument(question);
    try {
      ErrorEntry entry = SupplyReplies.error(question, reply);
      return entry.isError() ? Optional.of(entry.format()) : Optional.empty();
    } catch (SupplyException e) {
      throw talk.doubted(e);
    }
  }

  @Override
  public int readingExchanges() {
    return talk.compound() ? 1 : looks.size();
  }

  @Override
  public void readPart(int part, ReadingDraft draft) throws SupplyException {
    List<Look> asked = talk.compound() ? looks : looks.subList(part, part + 1);
    List<String> words = talk.compound() ? wholeReading : wholeReading.subList(part, part + 1);
    talk.ask(
        words,
        asked.size(),
        items -> {
          for (int i = 0; i < asked.size(); i++) {
            asked.get(i).taker().take(items.get(i), draft);
          }
          return draft;
        });
  }

  @Override
  public void armTimer(double seconds) throws SupplyException {
    if (descriptor.timer().isPresent()) {
      talk.tell(SupplyWords.filled(descriptor.timer().get().arm(), "seconds", seconds, channel));
    }
  }

  @Override
  public void feedTimer() throws SupplyException {
    tellIfKnown(descriptor.timer().flatMap(OutputTimer::feed));
  }

  @Override
  public void disarmTimer() throws SupplyException {
    tellIfKnown(descriptor.timer().flatMap(OutputTimer::disarm));
  }

  private void tellIfKnown(Optional<String> words) throws SupplyException {
    if (words.isPresent()) {
      talk.tell(SupplyWords.filled(words.get(), channel));
    }
  }

  @Override
  public boolean isOutOfStep() {
    return talk.isOutOfStep();
  }

  @Override
  public void resynchronise() throws SupplyException {
    talk.reopen();
    // Whatever the words for remote control take in time, off goes out before them.
    talk.tell(off);
    prepare();
  }

  @Override
  public void close() {
    talk.close();
  }
}
