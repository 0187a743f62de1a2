// A disk between a program and the real one, loaded with LD_PRELOAD, that can be cut from its power or run full.
//
// LARDINER_DISK_KEPT=DIR: after each fsync or fdatasync the file as it then is is copied to DIR under its name, and
// what
//   was removed is removed when its folder is synced: what a disk has for certain when the power goes.
// LARDINER_DISK_FULL=FILE: while there is that file there is no space left for such files as:
// LARDINER_DISK_BYTES=N: after N bytes written to files whose path has "ledger" in it there is no space left (ENOSPC).
#include <dirent.h>
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#include <cstdio>
#include <cstring>

namespace {

template <class Function>
Function real(const char* name) {
  return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name));
}

bool path_of(int file, char* path) {
  char link[64];
  std::snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  const ssize_t length = ::readlink(link, path, PATH_MAX - 1);
  if (length <= 0) return false;
  path[length] = '\0';
  return path[0] == '/';
}

bool copy_bytes(int from, int to) {
  char bytes[65536];
  off_t at = 0;
  for (;;) {
    const ssize_t got = ::pread(from, bytes, sizeof bytes, at);
    if (got <= 0) return got == 0;
    if (real<ssize_t (*)(int, const void*, size_t)>("write")(to, bytes, static_cast<size_t>(got)) != got) return false;
    at += got;
  }
}

// A folder that was synced has for certain lost what was taken out of it.
void forget_removed(const char* path, const char* folder) {
  DIR* const kept = ::opendir(folder);
  if (!kept) return;
  while (const dirent* entry = ::readdir(kept)) {
    char there[PATH_MAX], copy[PATH_MAX];
    if (entry->d_name[0] == '.' || std::snprintf(there, sizeof there, "%s/%s", path, entry->d_name) >= PATH_MAX)
      continue;
    if (::access(there, F_OK) == 0 || std::snprintf(copy, sizeof copy, "%s/%s", folder, entry->d_name) >= PATH_MAX)
      continue;
    ::unlink(copy);
  }
  ::closedir(kept);
}

// Whole or not at all: the copy itself may be killed.
void keep(int file) {
  const char* folder = ::getenv("LARDINER_DISK_KEPT");
  char path[PATH_MAX], kept[PATH_MAX], draft[PATH_MAX];
  struct stat status {};
  if (!folder || !path_of(file, path) || ::fstat(file, &status) != 0) return;
  if (S_ISDIR(status.st_mode)) return forget_removed(path, folder);
  if (!S_ISREG(status.st_mode)) return;
  const char* name = std::strrchr(path, '/') + 1;
  if (std::snprintf(kept, sizeof kept, "%s/%s", folder, name) >= PATH_MAX ||
      std::snprintf(draft, sizeof draft, "%s/%s.draft", folder, name) >= PATH_MAX)
    return;
  const int from = ::open(path, O_RDONLY | O_CLOEXEC);
  const int to = ::open(draft, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (from >= 0 && to >= 0 && copy_bytes(from, to)) ::rename(draft, kept);
  if (from >= 0) ::close(from);
  if (to >= 0) ::close(to);
}

bool is_full(int file, size_t count) {
  static const char* const most = ::getenv("LARDINER_DISK_BYTES");
  static const char* const sign = ::getenv("LARDINER_DISK_FULL");
  static long long left = most ? ::atoll(most) : 0;
  char path[PATH_MAX];
  if ((!most && !sign) || !path_of(file, path) || !std::strstr(path, "ledger")) return false;
  left -= static_cast<long long>(count);
  if (sign ? ::access(sign, F_OK) != 0 : left >= 0) return false;
  errno = ENOSPC;
  return true;
}

}  // namespace

extern "C" {

int fsync(int file) {
  const int done = real<int (*)(int)>("fsync")(file);
  if (done == 0) keep(file);
  return done;
}

int fdatasync(int file) {
  const int done = real<int (*)(int)>("fdatasync")(file);
  if (done == 0) keep(file);
  return done;
}

ssize_t write(int file, const void* bytes, size_t count) {
  return is_full(file, count) ? -1 : real<ssize_t (*)(int, const void*, size_t)>("write")(file, bytes, count);
}

ssize_t pwrite(int file, const void* bytes, size_t count, off_t at) {
  return is_full(file, count) ? -1
                              : real<ssize_t (*)(int, const void*, size_t, off_t)>("pwrite")(file, bytes, count, at);
}

ssize_t pwrite64(int file, const void* bytes, size_t count, off64_t at) {
  return is_full(file, count)
             ? -1
             : real<ssize_t (*)(int, const void*, size_t, off64_t)>("pwrite64")(file, bytes, count, at);
}
}
