package railglow.scpi;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The error numbers and texts every SCPI instrument shares (SCPI-1999 volume 2, chapter 21).
 * Numbers above 0 belong to the maker of the instrument and are not listed.
 */
public enum ScpiError {
  NO_ERROR(0, "No error"),
  COMMAND_ERROR(-100, "Command error"),
  INVALID_CHARACTER(-101, "Invalid character"),
  SYNTAX_ERROR(-102, "Syntax error"),
  INVALID_SEPARATOR(-103, "Invalid separator"),
  DATA_TYPE_ERROR(-104, "Data type error"),
  GET_NOT_ALLOWED(-105, "GET not allowed"),
  PARAMETER_NOT_ALLOWED(-108, "Parameter not allowed"),
  MISSING_PARAMETER(-109, "Missing parameter"),
  COMMAND_HEADER_ERROR(-110, "Command header error"),
  HEADER_SEPARATOR_ERROR(-111, "Header separator error"),
  MNEMONIC_TOO_LONG(-112, "Program mnemonic too long"),
  UNDEFINED_HEADER(-113, "Undefined header"),
  HEADER_SUFFIX_OUT_OF_RANGE(-114, "Header suffix out of range"),
  UNEXPECTED_NUMBER_OF_PARAMETERS(-115, "Unexpected number of parameters"),
  NUMERIC_DATA_ERROR(-120, "Numeric data error"),
  INVALID_CHARACTER_IN_NUMBER(-121, "Invalid character in number"),
  EXPONENT_TOO_LARGE(-123, "Exponent too large"),
  TOO_MANY_DIGITS(-124, "Too many digits"),
  NUMERIC_DATA_NOT_ALLOWED(-128, "Numeric data not allowed"),
  SUFFIX_ERROR(-130, "Suffix error"),
  INVALID_SUFFIX(-131, "Invalid suffix"),
  SUFFIX_TOO_LONG(-134, "Suffix too long"),
  SUFFIX_NOT_ALLOWED(-138, "Suffix not allowed"),
  CHARACTER_DATA_ERROR(-140, "Character data error"),
  INVALID_CHARACTER_DATA(-141, "Invalid character data"),
  CHARACTER_DATA_TOO_LONG(-144, "Character data too long"),
  CHARACTER_DATA_NOT_ALLOWED(-148, "Character data not allowed"),
  STRING_DATA_ERROR(-150, "String data error"),
  INVALID_STRING_DATA(-151, "Invalid string data"),
  STRING_DATA_NOT_ALLOWED(-158, "String data not allowed"),
  BLOCK_DATA_ERROR(-160, "Block data error"),
  INVALID_BLOCK_DATA(-161, "Invalid block data"),
  BLOCK_DATA_NOT_ALLOWED(-168, "Block data not allowed"),
  EXPRESSION_ERROR(-170, "Expression error"),
  EXPRESSION_DATA_NOT_ALLOWED(-178, "Expression data not allowed"),
  EXECUTION_ERROR(-200, "Execution error"),
  INVALID_WHILE_IN_LOCAL(-201, "Invalid while in local"),
  SETTINGS_LOST(-202, "Settings lost due to rtl"),
  COMMAND_PROTECTED(-203, "Command protected"),
  TRIGGER_ERROR(-210, "Trigger error"),
  TRIGGER_IGNORED(-211, "Trigger ignored"),
  INIT_IGNORED(-213, "Init ignored"),
  PARAMETER_ERROR(-220, "Parameter error"),
  SETTINGS_CONFLICT(-221, "Settings conflict"),
  DATA_OUT_OF_RANGE(-222, "Data out of range"),
  TOO_MUCH_DATA(-223, "Too much data"),
  ILLEGAL_PARAMETER_VALUE(-224, "Illegal parameter value"),
  DATA_CORRUPT_OR_STALE(-230, "Data corrupt or stale"),
  DATA_QUESTIONABLE(-231, "Data questionable"),
  HARDWARE_ERROR(-240, "Hardware error"),
  HARDWARE_MISSING(-241, "Hardware missing"),
  DEVICE_SPECIFIC_ERROR(-300, "Device-specific error"),
  SYSTEM_ERROR(-310, "System error"),
  MEMORY_ERROR(-311, "Memory error"),
  CALIBRATION_MEMORY_LOST(-313, "Calibration memory lost"),
  CONFIGURATION_MEMORY_LOST(-315, "Configuration memory lost"),
  OUT_OF_MEMORY(-321, "Out of memory"),
  SELF_TEST_FAILED(-330, "Self-test failed"),
  CALIBRATION_FAILED(-340, "Calibration failed"),
  QUEUE_OVERFLOW(-350, "Queue overflow"),
  COMMUNICATION_ERROR(-360, "Communication error"),
  PARITY_ERROR(-361, "Parity error in program message"),
  FRAMING_ERROR(-362, "Framing error in program message"),
  INPUT_BUFFER_OVERRUN(-363, "Input buffer overrun"),
  TIME_OUT_ERROR(-365, "Time out error"),
  QUERY_ERROR(-400, "Query error"),
  QUERY_INTERRUPTED(-410, "Query INTERRUPTED"),
  QUERY_UNTERMINATED(-420, "Query UNTERMINATED"),
  QUERY_DEADLOCKED(-430, "Query DEADLOCKED"),
  QUERY_UNTERMINATED_AFTER_INDEFINITE(-440, "Query UNTERMINATED after indefinite response"),
  POWER_ON(-500, "Power on"),
  USER_REQUEST(-600, "User request"),
  REQUEST_CONTROL(-700, "Request control"),
  OPERATION_COMPLETE(-800, "Operation complete");

  private static final Map<Integer, ScpiError> BY_CODE = new HashMap<>();

  static {
    for (ScpiError error : values()) {
      BY_CODE.put(error.code, error);
    }
  }

  private final int code;
  private final String text;

  ScpiError(int code, String text) {
    this.code = code;
    this.text = text;
  }

  public int code() {
    return code;
  }

  public String text() {
    return text;
  }

  /** The listed error of that number, if the standard lists it. */
  public static Optional<ScpiError> of(int code) {
    return Optional.ofNullable(BY_CODE.get(code));
  }

  /**
   * The bit of the standard event register an error of this number sets; empty for 0 and for the
   * numbers that belong to no class.
   */
  public static Optional<StandardEventBit> eventBit(int code) {
    if (code > 0) {
      return Optional.of(StandardEventBit.DEVICE_ERROR);
    }
    return Optional.ofNullable(
        switch (-(code / 100)) {
          case 1 -> StandardEventBit.COMMAND_ERROR;
          case 2 -> StandardEventBit.EXECUTION_ERROR;
          case 3 -> StandardEventBit.DEVICE_ERROR;
          case 4 -> StandardEventBit.QUERY_ERROR;
          case 5 -> StandardEventBit.POWER_ON;
          case 6 -> StandardEventBit.USER_REQUEST;
          case 7 -> StandardEventBit.REQUEST_CONTROL;
          case 8 -> StandardEventBit.OPERATION_COMPLETE;
          default -> null;
        });
  }
}
