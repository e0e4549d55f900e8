package railglow.config;

import java.time.Instant;
import railglow.camera.noise.NoiseFigures;

/**
 * A camera's noise as a bench check found it.
 *
 * @param measured when
 * @param inKelvin whether the amplitudes are in kelvin; else in counts
 */
public record MeasuredNoise(Instant measured, boolean inKelvin, NoiseFigures figures) {}
