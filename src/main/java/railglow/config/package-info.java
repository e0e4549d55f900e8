/**
 * Every file a user writes, read and checked.
 *
 * <p>Owns YAML with file and line in each complaint, turned into the value types of the other
 * rooms.
 *
 * <p>Must not know what is done with the values.
 */
package railglow.config;
