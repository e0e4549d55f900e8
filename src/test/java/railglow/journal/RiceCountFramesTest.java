package railglow.journal;

class RiceCountFramesTest extends FrameStoreContract {
  @Override
  String codec() {
    return "rice";
  }

  @Override
  SampleType type() {
    return SampleType.UINT16;
  }
}
