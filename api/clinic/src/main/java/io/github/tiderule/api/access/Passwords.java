package io.github.tiderule.api.access;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;

/**
 * Hashes passwords with Argon2id, 19 MiB and two passes, as the OWASP password storage guidance
 * says. Two are hashed at a time, so that many who try cannot take all memory. Thread-safe.
 */
public final class Passwords {

  /** Fewest characters of a password. */
  public static final int SHORTEST = 12;

  /** Most characters of a password. */
  public static final int LONGEST = 200;

  private static final int MEMORY_KIB = 19 * 1024;
  private static final int PASSES = 2;
  private static final int LANES = 1;
  private static final int HASH_BYTES = 32;
  private static final int SALT_BYTES = 16;

  private final Argon2Function function =
      Argon2Function.getInstance(MEMORY_KIB, PASSES, LANES, HASH_BYTES, Argon2.ID);
  private final Semaphore places = new Semaphore(2, true);
  private volatile @Nullable String nobodys;

  /**
   * The hash of a password, with its salt and its costs.
   *
   * @throws IllegalArgumentException if the password is too short or too long
   */
  public String hash(String password) {
    int length = password.codePointCount(0, password.length());
    if (!(length >= SHORTEST && length <= LONGEST)) {
      throw new IllegalArgumentException(
          "a password has " + SHORTEST + " to " + LONGEST + " characters");
    }
    places.acquireUninterruptibly();
    try {
      return Password.hash(password).addRandomSalt(SALT_BYTES).with(function).getResult();
    } finally {
      places.release();
    }
  }

  /** Whether a password is the one hashed. */
  public boolean check(String password, String hash) {
    if (password.length() > 2 * LONGEST) {
      return false;
    }
    places.acquireUninterruptibly();
    try {
      return Password.check(password, hash).with(Argon2Function.getInstanceFromHash(hash));
    } finally {
      places.release();
    }
  }

  /** Takes as long as a check, for a name nobody has. */
  public void checkNobodys(String password) {
    String hash = nobodys;
    if (hash == null) {
      hash = hash("the password of nobody");
      nobodys = hash;
    }
    check(password, hash);
  }
}
