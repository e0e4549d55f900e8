/**
 * Bytes to and from instruments, one exchange at a time, every wait bounded.
 *
 * <p>Owns ports, sockets, device files, child processes, and the transcript.
 *
 * <p>Must not know what the bytes mean.
 */
package railglow.link;
