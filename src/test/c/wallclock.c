/* Sets the wall clock of one process back by an hour as soon as a file exists: loaded with
   LD_PRELOAD; the file is named by WALL_CLOCK_BACK_WHEN. The monotonic clock is left alone. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stdlib.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

static time_t back(void) {
  const char *file = getenv("WALL_CLOCK_BACK_WHEN");
  return file != NULL && access(file, F_OK) == 0 ? 3600 : 0;
}

int clock_gettime(clockid_t id, struct timespec *now) {
  static int (*real)(clockid_t, struct timespec *);
  if (real == NULL) {
    real = (int (*)(clockid_t, struct timespec *))dlsym(RTLD_NEXT, "clock_gettime");
  }
  int result = real(id, now);
  if (result == 0 && (id == CLOCK_REALTIME || id == CLOCK_REALTIME_COARSE)) {
    now->tv_sec -= back();
  }
  return result;
}

int gettimeofday(struct timeval *restrict now, void *restrict zone) {
  struct timespec precise;
  (void)zone;
  int result = clock_gettime(CLOCK_REALTIME, &precise);
  now->tv_sec = precise.tv_sec;
  now->tv_usec = precise.tv_nsec / 1000;
  return result;
}

time_t time(time_t *where) {
  struct timespec precise;
  clock_gettime(CLOCK_REALTIME, &precise);
  if (where != NULL) {
    *where = precise.tv_sec;
  }
  return precise.tv_sec;
}
