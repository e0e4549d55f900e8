package railglow.fuzz;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;

/**
 * One parser of the list for a fuzzer that runs in a process of its own. Only its own class is
 * loaded, since the fuzzer takes its time over each.
 */
public final class FuzzOne {
  private static final MethodHandle CHECK = check(System.getenv("FUZZ_TARGET"));

  private FuzzOne() {}

  /** Called by the fuzzer for each input. */
  public static void fuzzerTestOneInput(byte[] bytes) throws Throwable {
    CHECK.invokeExact(bytes);
  }

  private static MethodHandle check(String className) {
    try {
      return MethodHandles.publicLookup()
          .findStatic(
              Class.forName(className), "check", MethodType.methodType(void.class, byte[].class));
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("no parser to fuzz: " + className, e);
    }
  }
}
