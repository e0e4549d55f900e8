package railglow.journal;

class DeflateFloatFramesTest extends FrameStoreContract {
  @Override
  String codec() {
    return "xor-deflate";
  }

  @Override
  SampleType type() {
    return SampleType.FLOAT32;
  }
}
