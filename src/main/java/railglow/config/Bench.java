package railglow.config;

import java.nio.file.Path;
import java.util.Set;
import railglow.safety.Envelope;

/**
 * One supply, one camera, the leads and the limits that belong to the place.
 *
 * @param supplyDescriptor path of the supply's descriptor
 * @param supplyAddress for example {@code tcp://192.0.2.7:5025} or {@code serial:/dev/ttyUSB0}
 * @param supplyChannel from 1
 * @param cameraDescriptor path of the camera's descriptor
 * @param cameraAddress for example {@code tcp://127.0.0.1:5600}, {@code exec:...} or {@code
 *     file:...}
 * @param leadOhms both leads together, there and back
 * @param leadErrorOhms how well that is known, clips included
 * @param sensedAtBoard whether the supply senses the voltage at the board (4-wire)
 * @param leadAmperes what the leads may carry; infinite when the file says nothing
 * @param connectorAmperes what clip or connector may carry; infinite likewise
 * @param limits of the place, leads and connector among them
 * @param acceptedMissing protections whose absence the bench's owner accepts by name
 * @param companion whether a companion process guards the supply
 */
public record Bench(
    String name,
    Path supplyDescriptor,
    String supplyAddress,
    int supplyChannel,
    Path cameraDescriptor,
    String cameraAddress,
    double leadOhms,
    double leadErrorOhms,
    boolean sensedAtBoard,
    double leadAmperes,
    double connectorAmperes,
    Envelope limits,
    Set<String> acceptedMissing,
    boolean companion) {
  public Bench {
    acceptedMissing = Set.copyOf(acceptedMissing);
  }

  public Bench withAddresses(String newSupplyAddress, String newCameraAddress) {
    return new Bench(
        name,
        supplyDescriptor,
        newSupplyAddress,
        supplyChannel,
        cameraDescriptor,
        newCameraAddress,
        leadOhms,
        leadErrorOhms,
        sensedAtBoard,
        leadAmperes,
        connectorAmperes,
        limits,
        acceptedMissing,
        companion);
  }
}
