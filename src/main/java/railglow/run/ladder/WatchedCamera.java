package railglow.run.ladder;

import railglow.camera.CameraDescriptor;
import railglow.camera.FrameSource;

/** A camera that only guards: its frames are looked at and not kept. */
public record WatchedCamera(FrameSource source, CameraDescriptor descriptor) {}
