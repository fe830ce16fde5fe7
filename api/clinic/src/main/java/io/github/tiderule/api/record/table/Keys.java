package io.github.tiderule.api.record.table;

import java.math.BigInteger;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.regex.Pattern;

/**
 * Keys of things in the record: 26 characters that sort in the order they were made in this
 * process, and by the millisecond otherwise, and cannot be guessed.
 */
public final class Keys {

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final String DIGITS = "0123456789abcdefghjkmnpqrstvwxyz";
  private static final int BITS_OF_DIGIT = 5;
  private static final int LENGTH = 26;
  private static final int RANDOM_BITS = 80;
  private static final int STEP_BITS = 64;
  private static final Pattern KEY = Pattern.compile("[" + DIGITS + "]{" + LENGTH + "}");

  private static BigInteger last = BigInteger.ZERO;

  private Keys() {}

  /** A new key. */
  public static String next(Instant now) {
    BigInteger key;
    synchronized (Keys.class) {
      key =
          BigInteger.valueOf(now.toEpochMilli())
              .shiftLeft(RANDOM_BITS)
              .add(new BigInteger(RANDOM_BITS - 1, RANDOM));
      if (key.compareTo(last) <= 0) {
        key = last.add(new BigInteger(STEP_BITS, RANDOM)).add(BigInteger.ONE);
      }
      last = key;
    }
    StringBuilder text = new StringBuilder(LENGTH);
    for (int digit = LENGTH - 1; digit >= 0; digit--) {
      int value = key.shiftRight(digit * BITS_OF_DIGIT).intValue() & (DIGITS.length() - 1);
      text.append(DIGITS.charAt(value));
    }
    return text.toString();
  }

  /** Whether a text could be a key. */
  public static boolean isKey(String text) {
    return KEY.matcher(text).matches();
  }
}
