package railglow.journal;

class RawCountFramesTest extends FrameStoreContract {
  @Override
  String codec() {
    return "raw";
  }

  @Override
  SampleType type() {
    return SampleType.UINT16;
  }
}
