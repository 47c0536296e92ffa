/* Preloaded into every process of a house under test: the time of day is wrong by as many seconds as stand, as a
   64-bit number, in the file that CLOCK_SHIFT_FILE names. Clocks that only run on are left as they are, as when
   somebody sets a machine's clock. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

static const int64_t none = 0;
static const volatile int64_t *shift = &none;

__attribute__((constructor)) static void open_shift(void) {
  const char *name = getenv("CLOCK_SHIFT_FILE");
  int file = name ? open(name, O_RDONLY | O_CLOEXEC) : -1;
  if (file < 0) return;
  void *shared = mmap(NULL, sizeof none, PROT_READ, MAP_SHARED, file, 0);
  if (shared != MAP_FAILED) shift = shared;
  close(file);
}

int clock_gettime(clockid_t clock, struct timespec *now) {
  static int (*real)(clockid_t, struct timespec *);
  if (!real) real = (int (*)(clockid_t, struct timespec *))dlsym(RTLD_NEXT, "clock_gettime");
  int result = real(clock, now);
  if (result == 0 && (clock == CLOCK_REALTIME || clock == CLOCK_REALTIME_COARSE)) now->tv_sec += *shift;
  return result;
}

int gettimeofday(struct timeval *restrict now, void *restrict zone) {
  (void)zone;
  struct timespec time_of_day;
  if (clock_gettime(CLOCK_REALTIME, &time_of_day) != 0) return -1;
  now->tv_sec = time_of_day.tv_sec;
  now->tv_usec = time_of_day.tv_nsec / 1000;
  return 0;
}

time_t time(time_t *result) {
  struct timespec now;
  clock_gettime(CLOCK_REALTIME, &now);
  if (result) *result = now.tv_sec;
  return now.tv_sec;
}
