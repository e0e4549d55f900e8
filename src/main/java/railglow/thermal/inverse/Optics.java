package railglow.thermal.inverse;

import railglow.thermal.FirstOrderResponse;

/**
 * What lies between the heat and the camera.
 *
 * @param lagSeconds of a coat over everything, first order
 * @param contactResistance between what is seen and the plate below it, K m^2/W; 0 for bare plate
 */
record Optics(Plate plate, double lagSeconds, double contactResistance) {
  /** The channels of a body of a time constant behind coat and camera. */
  FirstOrderResponse seen(RiseMaps maps, double bodySeconds) {
    return LagChain.of(
        maps.single(), bodySeconds, maps.cameraSeconds(), lagSeconds, maps.periodSeconds());
  }
}
