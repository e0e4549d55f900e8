/* The streaming reduction as a plain loop: the measure that the others are compared with.
 *   gcc -O3 -march=native -o reduction reduction.c
 *   ./reduction FILE WIDTH HEIGHT FRAMES_PER_QUARTER PASSES RESULT   quarters, channels, moments
 *   ./reduction FILE WIDTH HEIGHT FRAMES_PER_QUARTER PASSES          read() and sum only: the limit
 * Prints the milliseconds of each pass. RESULT gets the planes meanI, meanC, squaresI, squaresC as float32. */
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

static double millis(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

static void fill(int fd, void *into, size_t bytes) {
  char *at = into;
  while (bytes > 0) {
    ssize_t got = read(fd, at, bytes);
    if (got <= 0) exit(2);
    at += got;
    bytes -= got;
  }
}

static void add(const uint16_t *restrict counts, uint32_t *restrict sums, int n) {
  for (int i = 0; i < n; i++) sums[i] += counts[i];
}

static void mean(uint32_t *restrict sums, const uint16_t *restrict first, float *restrict into, int frames, int n) {
  double scale = 1.0 / frames;
  for (int i = 0; i < n; i++) {
    into[i] = (float)(((int64_t)sums[i] - (int64_t)frames * first[i]) * scale);
    sums[i] = 0;
  }
}

static void moments(const float *restrict x, float *restrict m, float *restrict s, float share, int n) {
  float rest = 1 - share;
  for (int i = 0; i < n; i++) {
    float d = x[i] - m[i];
    s[i] += d * d * rest;
    m[i] += d * share;
  }
}

int main(int count, char **args) {
  if (count < 6) return 1;
  int n = atoi(args[2]) * atoi(args[3]), per = atoi(args[4]), passes = atoi(args[5]);
  int fd = open(args[1], O_RDONLY);
  struct stat about;
  if (fd < 0 || fstat(fd, &about)) return 1;
  int cycles = about.st_size / (2L * n * per * 4);
  uint16_t *frame = malloc(2L * n), *first = malloc(2L * n);
  uint32_t *sums = calloc(n, 4);
  float *q[4], *plane[4], *x = malloc(4L * n), *y = malloc(4L * n);
  for (int k = 0; k < 4; k++) q[k] = malloc(4L * n), plane[k] = malloc(4L * n);
  uint64_t total = 0;
  for (int pass = 0; pass < passes; pass++) {
    double start = millis();
    lseek(fd, 0, SEEK_SET);
    for (int k = 0; k < 4; k++) memset(plane[k], 0, 4L * n);
    for (int cycle = 0; cycle < cycles; cycle++) {
      for (int quarter = 0; quarter < 4; quarter++) {
        for (int k = 0; k < per; k++) {
          fill(fd, frame, 2L * n);
          if (count == 6) {
            for (int i = 0; i < n; i++) total += frame[i];
            continue;
          }
          if (cycle + quarter + k == 0) memcpy(first, frame, 2L * n);
          add(frame, sums, n);
        }
        if (count > 6) mean(sums, first, q[quarter], per, n);
      }
      if (count > 6) {
        for (int i = 0; i < n; i++) {
          x[i] = (q[1][i] + q[2][i] - q[0][i] - q[3][i]) * 0.5f;
          y[i] = (q[2][i] + q[3][i] - q[0][i] - q[1][i]) * 0.5f;
        }
        moments(x, plane[0], plane[2], 1.0f / (cycle + 1), n);
        moments(y, plane[1], plane[3], 1.0f / (cycle + 1), n);
      }
    }
    printf("%.3f\n", millis() - start);
  }
  if (count > 6) {
    FILE *out = fopen(args[6], "wb");
    for (int k = 0; k < 4; k++) fwrite(plane[k], 4, n, out);
    fclose(out);
  } else {
    fprintf(stderr, "%llu\n", (unsigned long long)total);
  }
  return 0;
}
