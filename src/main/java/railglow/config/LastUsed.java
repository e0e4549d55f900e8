package railglow.config;

import java.nio.file.Path;

/**
 * What was last worked on at a bench.
 *
 * @param board the board file
 * @param rail the rail's name in it
 */
public record LastUsed(Path board, String rail) {}
