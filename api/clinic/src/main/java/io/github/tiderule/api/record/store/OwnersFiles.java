package io.github.tiderule.api.record.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** Files of a record and its backups: whoever they belong to reads them, and nobody else. */
final class OwnersFiles {

  private static final Set<PosixFilePermission> DIRECTORY =
      PosixFilePermissions.fromString("rwx------");
  private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");

  /** What the database puts beside its file while it is open. */
  private static final List<String> BESIDE = List.of("-wal", "-shm", "-journal");

  private OwnersFiles() {}

  /** Makes a file and its directory where they are not there, and closes the file to others. */
  static void make(Path file) {
    try {
      makeDirectory(directory(file));
      try {
        Files.createFile(file, attributes(file, FILE));
      } catch (FileAlreadyExistsException e) {
        close(file);
        for (String ending : BESIDE) {
          close(beside(file, ending));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void makeDirectory(Path directory) throws IOException {
    if (!Files.isDirectory(directory)) {
      Files.createDirectories(directory, attributes(directory, DIRECTORY));
    }
  }

  private static FileAttribute<?>[] attributes(Path at, Set<PosixFilePermission> permissions) {
    return isPosix(at)
        ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(permissions)}
        : new FileAttribute<?>[0];
  }

  private static boolean isPosix(Path at) {
    return at.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  /** One that was made by an older program, or copied here, may be open to others. */
  private static void close(Path file) throws IOException {
    if (!isPosix(file) || !Files.isRegularFile(file)) {
      return;
    }
    if (!FILE.containsAll(Files.getPosixFilePermissions(file))) {
      try {
        Files.setPosixFilePermissions(file, FILE);
      } catch (IOException e) {
        // it belongs to another, who decides; whether it can be used shows when it is opened
      }
    }
  }

  /** A new, empty file in the directory of another, to be filled and then renamed to it. */
  static Path beginBeside(Path file) {
    try {
      return Files.createTempFile(directory(file), file.getFileName() + ".", ".begun");
    } catch (IOException e) {
      throw new IllegalArgumentException("no file can be made in " + directory(file), e);
    }
  }

  /** Gives a file that was filled its name: it is there whole and on the disk, or not at all. */
  static void finish(Path begun, Path file) {
    try {
      flush(begun, StandardOpenOption.WRITE);
      Files.move(begun, file);
    } catch (FileAlreadyExistsException e) {
      throw new IllegalArgumentException(file + " came to be meanwhile; nothing is overwritten", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    try {
      flush(directory(file), StandardOpenOption.READ);
    } catch (IOException e) {
      // some systems do not let a directory be opened; the file itself is on the disk
    }
  }

  private static void flush(Path path, StandardOpenOption how) throws IOException {
    try (FileChannel channel = FileChannel.open(path, how)) {
      channel.force(true);
    }
  }

  /** Removes a file that was begun, with what the database put beside it. */
  static void remove(Path begun) {
    try {
      Files.deleteIfExists(begun);
      for (String ending : BESIDE) {
        Files.deleteIfExists(beside(begun, ending));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The directory a file lies in. */
  static Path directory(Path file) {
    return Objects.requireNonNull(file.toAbsolutePath().getParent());
  }

  static Path beside(Path file, String ending) {
    return file.resolveSibling(file.getFileName() + ending);
  }
}
