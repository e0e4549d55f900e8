/**
 * From what a camera sees to what a surface has: radiation laws, emissivity, reflection.
 *
 * <p>Owns Planck's law over a band, its handy approximation, and the correction of temperatures and
 * rises for emissivity with their errors. Pure.
 *
 * <p>Must not know boards, cameras or runs.
 */
package railglow.thermal.radiometry;
