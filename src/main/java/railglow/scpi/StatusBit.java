package railglow.scpi;

import java.util.ArrayList;
import java.util.List;

/** A named bit of a status register. */
public interface StatusBit {
  /** The bit's number, 0 for the lowest. */
  int bit();

  /** What it says, in the words of the standard. */
  String text();

  default int weight() {
    return 1 << bit();
  }

  default boolean isSetIn(int register) {
    return (register & weight()) != 0;
  }

  /** The named bits that are set in a register's value, lowest first. */
  static <B extends Enum<B> & StatusBit> List<B> setIn(Class<B> register, int value) {
    List<B> set = new ArrayList<>();
    for (B bit : register.getEnumConstants()) {
      if (bit.isSetIn(value)) {
        set.add(bit);
      }
    }
    return set;
  }
}
