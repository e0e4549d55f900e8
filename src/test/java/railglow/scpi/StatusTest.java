package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatusTest {
  @Test
  void everyListedErrorHasTheStandardsText() throws IOException {
    // SCPI-1999 volume 2, chapter 21, as reprinted in instrument manuals
    List<String> lines;
    try (var in = StatusTest.class.getResourceAsStream("error-texts.txt")) {
      lines = new String(in.readAllBytes(), StandardCharsets.US_ASCII).lines().toList();
    }
    assertEquals(ScpiError.values().length, lines.size());
    for (String line : lines) {
      int equals = line.indexOf('=');
      ScpiError error = ScpiError.of(Integer.parseInt(line.substring(0, equals))).orElseThrow();
      assertEquals(line.substring(equals + 1), error.text());
    }
  }

  @ParameterizedTest
  // HP 70004 and Agilent 86140 manuals: error class to bit of the standard event register
  @CsvSource({
    "-100,32", "-113,32", "-199,32", "-200,16", "-222,16", "-300,8", "-350,8", "1,8", "32767,8",
    "-400,4", "-410,4", "-500,128", "-600,64", "-700,2", "-800,1", "0,0", "-99,0", "-900,0"
  })
  void anErrorSetsTheBitOfItsClass(int code, int weight) {
    assertEquals(weight, ScpiError.eventBit(code).map(StatusBit::weight).orElse(0));
  }

  @Test
  void theLastEntryGivesWayWhenTheQueueIsFullAndTheOldOnesStay() {
    ErrorQueue queue = new ErrorQueue(3);
    for (int code = 1; code <= 5; code++) {
      queue.add(new ErrorEntry(code, "e"));
    }
    assertEquals(
        List.of(1, 2, -350, 0),
        List.of(
            queue.next().code(), queue.next().code(), queue.next().code(), queue.next().code()));
  }

  @Test
  void noErrorIsNeverQueued() {
    ErrorQueue queue = new ErrorQueue(2);
    queue.add(ErrorEntry.NONE);
    assertTrue(queue.isEmpty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "0,\"No error\"|0|No error",
        "+0,\"No error\"|0|No error",
        "0,\"\"|0|No error",
        "0|0|No error",
        "-113,\"Undefined header;VOLX 1\"|-113|Undefined header;VOLX 1",
        "-113, 'Undefined header'|-113|Undefined header",
        "511,Fan slow|511|Fan slow",
        "-32768,\"\"|-32768|``",
        "12,\"say \"\"hi\"\"\"|12|say \"hi\"",
      })
  void errorRepliesOfRealInstrumentsAreRead(String reply, int code, String text)
      throws ScpiException {
    assertEquals(new ErrorEntry(code, text), ErrorEntry.parse(reply));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "No error",
        "1.5,\"x\"",
        "32768,\"x\"",
        "-32769,\"x\"",
        "1,\"no end",
        "1,\"a\" b",
        "``"
      })
  void anErrorReplyThatIsNoneIsRefused(String reply) {
    assertThrows(ScpiException.class, () -> ErrorEntry.parse(reply));
  }

  @Test
  void anUnknownCommandAfterOperationCompleteGivesThirtyThree() {
    // PPA500 analyser manual: 32 (command error) + 1 (operation complete)
    InstrumentStatus status = new InstrumentStatus(10);
    status.clear();
    status.raise(StandardEventBit.OPERATION_COMPLETE);
    status.report(ErrorEntry.of(ScpiError.UNDEFINED_HEADER));
    assertEquals(33, status.takeStandardEvents());
    assertEquals(0, status.takeStandardEvents());
  }

  @Test
  void aFreshInstrumentSaysItWasSwitchedOn() {
    assertEquals(128, new InstrumentStatus(10).takeStandardEvents());
  }

  @Test
  void clearForgetsEventsAndErrorsButNotWhatIsEnabled() {
    InstrumentStatus status = new InstrumentStatus(10);
    status.setEventEnable(60);
    status.setServiceEnable(255);
    status.report(ErrorEntry.of(ScpiError.SYNTAX_ERROR));
    status.questionable().setEnable(1);
    status.questionable().setCondition(1);
    // error queue 4 + questionable 8 + event summary 32 + master 64
    assertEquals(4 + 8 + 32 + 64, status.statusByte(false));
    status.clear();
    assertEquals(0, status.statusByte(false));
    assertEquals(60, status.eventEnable());
    assertEquals(191, status.serviceEnable());
    assertEquals(16 + 64, status.statusByte(true));
  }

  @Test
  void aConditionIsRememberedWhenItComesAndReadOnce() {
    StatusRegister register = new StatusRegister();
    register.setCondition(QuestionableBit.TEMPERATURE.weight());
    register.setCondition(0);
    assertFalse(register.summary());
    register.setEnable(16);
    assertTrue(register.summary());
    assertEquals(16, register.takeEvents());
    assertEquals(0, register.takeEvents());
    register.setFilters(0, 16);
    register.setCondition(16);
    assertEquals(0, register.takeEvents());
    register.setCondition(0);
    assertEquals(16, register.takeEvents());
  }

  @Test
  void theHighestBitIsAlwaysZero() {
    StatusRegister register = new StatusRegister();
    register.setCondition(0xffff);
    assertEquals(0x7fff, register.condition());
    assertEquals(0x7fff, register.takeEvents());
  }

  @Test
  void setBitsAreNamed() {
    assertEquals(
        List.of(StandardEventBit.OPERATION_COMPLETE, StandardEventBit.COMMAND_ERROR),
        StatusBit.setIn(StandardEventBit.class, 33));
    assertEquals(
        List.of(StatusByteBit.QUESTIONABLE, StatusByteBit.OPERATION),
        StatusBit.setIn(StatusByteBit.class, 136));
    assertEquals(
        List.of(OperationBit.WAITING_FOR_TRIGGER), StatusBit.setIn(OperationBit.class, 32));
    assertEquals(
        List.of(QuestionableBit.VOLTAGE, QuestionableBit.COMMAND_WARNING),
        StatusBit.setIn(QuestionableBit.class, 16385));
  }
}
