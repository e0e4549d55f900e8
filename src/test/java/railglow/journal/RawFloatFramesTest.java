package railglow.journal;

class RawFloatFramesTest extends FrameStoreContract {
  @Override
  String codec() {
    return "raw";
  }

  @Override
  SampleType type() {
    return SampleType.FLOAT32;
  }
}
