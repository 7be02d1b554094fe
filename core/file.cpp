// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <random>
#include <system_error>
#include <utility>

namespace layshaft {
namespace {

namespace fs = std::filesystem;

constexpr int kMostLinks = 40;  // as the system itself follows
constexpr mode_t kPermissions = 07777;

/// An open file that is closed whatever happens.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }
  bool open() const { return fd_ >= 0; }
  /// Some file systems tell only here that something was not written.
  bool close() { return ::close(std::exchange(fd_, -1)) == 0; }

 private:
  int fd_;
};

Problem unwritable(int error) {
  return {.kind = Problem::Kind::FileUnwritable, .given = std::generic_category().message(error)};
}

Problem unreadable(int error) {
  return {.kind = Problem::Kind::FileUnreadable, .given = std::generic_category().message(error)};
}

/// What is no plain file is neither read nor replaced.
std::optional<Problem> oddity(const struct stat& what, Problem (*problem)(int)) {
  if (S_ISREG(what.st_mode)) return std::nullopt;
  return S_ISDIR(what.st_mode) ? problem(EISDIR) : Problem{.kind = Problem::Kind::NotAFile};
}

/// All of it from the start of the file on; false leaves the reason in errno.
bool writeAll(int fd, std::string_view bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t wrote = ::pwrite(fd, bytes.data() + done, bytes.size() - done, static_cast<off_t>(done));
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return false;
    done += static_cast<std::size_t>(wrote);
  }
  return true;
}

/// On the disk, and as long as it must be.
bool settled(int fd, std::size_t size) {
  if (::fsync(fd) != 0) return false;
  struct stat now {};
  if (::fstat(fd, &now) != 0) return false;
  if (static_cast<std::size_t>(now.st_size) == size) return true;
  errno = EIO;
  return false;
}

std::string readAll(int fd, std::size_t most, int& error) {
  std::string text;
  constexpr std::size_t kPart = std::size_t{64} << 10;
  error = 0;
  while (text.size() < most) {
    const std::size_t before = text.size();
    text.resize(std::min(before + kPart, most));
    const ssize_t got = ::pread(fd, text.data() + before, text.size() - before, static_cast<off_t>(before));
    text.resize(before + static_cast<std::size_t>(std::max<ssize_t>(got, 0)));
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) error = errno;
    if (got <= 0) break;
  }
  return text;
}

bool isLink(const fs::path& file) {
  std::error_code error;
  return fs::is_symlink(fs::symlink_status(file, error));
}

/// Writes over a file that cannot be replaced.
std::optional<Problem> writeInPlace(const fs::path& target, std::string_view bytes) {
  Descriptor file(::open(target.c_str(), O_RDWR | O_CLOEXEC));
  if (!file.open()) return unwritable(errno);
  struct stat was {};
  if (::fstat(file.get(), &was) != 0) return unwritable(errno);
  int error = 0;
  const std::string old = readAll(file.get(), static_cast<std::size_t>(was.st_size), error);
  if (error != 0) return unwritable(error);
  bool restored = true;
  // Before anything is overwritten there is room for all of it.
  if (!bytes.empty()) error = ::posix_fallocate(file.get(), 0, static_cast<off_t>(bytes.size()));
  if (error == 0) {
    if (writeAll(file.get(), bytes) && ::ftruncate(file.get(), static_cast<off_t>(bytes.size())) == 0 &&
        settled(file.get(), bytes.size()))
      return std::nullopt;
    error = errno;
    restored = writeAll(file.get(), old);
  }
  restored = ::ftruncate(file.get(), was.st_size) == 0 && ::fsync(file.get()) == 0 && restored;
  return unwritable(restored ? error : EIO);
}

/// So that the new name outlives a power cut; a file system that cannot do that has still renamed.
void settleFolder(const fs::path& folder) {
  Descriptor open(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (open.open()) ::fsync(open.get());
}

/// A name that no other file of the folder has.
std::string freshName(const fs::path& folder) {
  constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyz0123456789";
  constexpr int kLength = 12;
  std::random_device random;
  std::string name = ".layshaft-";
  for (int i = 0; i < kLength; ++i) name += kLetters[random() % kLetters.size()];
  return (folder / name).string();
}

/// Gives a file the list of who may do what that another has, if that has one.
bool copyAccessList(int fd, const fs::path& from) {
  constexpr const char* kList = "system.posix_acl_access";
  const ssize_t size = ::getxattr(from.c_str(), kList, nullptr, 0);
  if (size <= 0) return true;
  std::string list(static_cast<std::size_t>(size), '\0');
  return ::getxattr(from.c_str(), kList, list.data(), list.size()) == size &&
         ::fsetxattr(fd, kList, list.data(), list.size(), 0) == 0;
}

/// Makes a file that takes the place of an old one belong to whom the old one belonged, as far as allowed.
bool giveTo(int fd, const struct stat& was, const fs::path& old) {
  mode_t mode = was.st_mode & kPermissions;
  const bool given =
      ::fchown(fd, was.st_uid, was.st_gid) == 0 || ::fchown(fd, static_cast<uid_t>(-1), was.st_gid) == 0;
  constexpr mode_t kOfTheGroup = 06070;
  if (!given) mode &= ~kOfTheGroup;  // they were meant for another group
  return ::fchmod(fd, mode) == 0 && copyAccessList(fd, old);
}

}  // namespace

Result<std::string> readFile(const fs::path& file, std::size_t most) {
  struct stat what {};
  if (::stat(file.c_str(), &what) != 0) return unreadable(errno);
  if (auto odd = oddity(what, unreadable)) return *odd;
  // It may have become a pipe in between: then opening must not wait for somebody to write.
  const Descriptor open(::open(file.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
  if (!open.open()) return unreadable(errno);
  int error = 0;
  std::string text = readAll(open.get(), most + 1, error);  // a byte more than allowed is enough to know
  if (error != 0) return unreadable(error);
  if (text.size() > most)
    return Problem{.kind = Problem::Kind::FileTooLarge, .high = static_cast<double>(most)};
  return text;
}

std::optional<Problem> saveFile(const fs::path& file, std::string_view bytes) {
  const fs::path target = fileBehind(file);
  if (isLink(target)) return unwritable(ELOOP);  // links in a circle
  struct stat was {};
  const bool exists = ::stat(target.c_str(), &was) == 0;
  if (exists)
    if (auto odd = oddity(was, unwritable)) return odd;
  if (exists && ::access(target.c_str(), W_OK) != 0) return unwritable(errno);

  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  const std::string name = freshName(folder);
  // A file that only its owner may read is never readable to others, not even while it is written.
  Descriptor fresh(::open(name.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, exists ? 0600 : 0666));
  if (!fresh.open()) {
    const int error = errno;
    const bool noNewFiles = error == EACCES || error == EPERM;
    return exists && noNewFiles ? writeInPlace(target, bytes) : unwritable(error);
  }
  const auto failed = [&](int error) {
    ::unlink(name.c_str());
    return unwritable(error);
  };
  if (!writeAll(fresh.get(), bytes)) return failed(errno);
  if (exists && !giveTo(fresh.get(), was, target)) {
    // Where whose it is cannot be set, as on file systems without owners, only the old file is as it should
    // be.
    ::unlink(name.c_str());
    return writeInPlace(target, bytes);
  }
  if (!settled(fresh.get(), bytes.size())) return failed(errno);
  if (!fresh.close()) return failed(errno);
  if (::rename(name.c_str(), target.c_str()) != 0) {
    const int error = errno;
    const bool cannotBeReplaced = error == EBUSY || error == EXDEV || error == EPERM || error == EACCES;
    if (!exists || !cannotBeReplaced) return failed(error);
    ::unlink(name.c_str());
    return writeInPlace(target, bytes);
  }
  settleFolder(folder);
  return std::nullopt;
}

fs::path fileBehind(const fs::path& file) {
  std::error_code error;
  fs::path behind = file;
  for (int i = 0; i < kMostLinks && isLink(behind); ++i) {
    const fs::path next = fs::read_symlink(behind, error);
    if (error) break;
    behind = next.is_absolute() ? next : behind.parent_path() / next;
  }
  return behind;
}

bool sameFile(const fs::path& a, const fs::path& b) {
  std::error_code error;
  const bool there = fs::exists(a, error) && fs::exists(b, error);
  if (there) return fs::equivalent(a, b, error);
  const auto place = [&](const fs::path& file) {
    return fs::weakly_canonical(fs::absolute(fileBehind(file), error), error);
  };
  const fs::path placeA = place(a);
  return !placeA.empty() && placeA == place(b);
}

std::optional<FileMark> markOf(const fs::path& file) {
  struct stat what {};
  if (::stat(file.c_str(), &what) != 0) return std::nullopt;
  constexpr std::int64_t kNsPerSecond = 1'000'000'000;
  return FileMark{static_cast<std::int64_t>(what.st_mtim.tv_sec) * kNsPerSecond + what.st_mtim.tv_nsec,
                  static_cast<std::uintmax_t>(what.st_size)};
}

}  // namespace layshaft
