package io.github.tiderule.api.record;

import java.security.SecureRandom;
import java.time.Instant;
import java.util.regex.Pattern;

/**
 * Keys of things in the record: 26 characters that sort by the moment they were made, to the
 * millisecond, and cannot be guessed.
 */
public final class Keys {

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final String DIGITS = "0123456789abcdefghjkmnpqrstvwxyz";
  private static final int BITS = 5;
  private static final int TIME_DIGITS = 10;
  private static final int RANDOM_DIGITS = 16;
  private static final Pattern KEY =
      Pattern.compile("[" + DIGITS + "]{" + (TIME_DIGITS + RANDOM_DIGITS) + "}");

  private Keys() {}

  /** A new key. */
  public static String next(Instant now) {
    StringBuilder key = new StringBuilder(TIME_DIGITS + RANDOM_DIGITS);
    long millis = now.toEpochMilli();
    for (int shift = (TIME_DIGITS - 1) * BITS; shift >= 0; shift -= BITS) {
      key.append(DIGITS.charAt((int) (millis >>> shift) & (DIGITS.length() - 1)));
    }
    for (int i = 0; i < RANDOM_DIGITS; i++) {
      key.append(DIGITS.charAt(RANDOM.nextInt(DIGITS.length())));
    }
    return key.toString();
  }

  /** Whether a text could be a key. */
  public static boolean isKey(String text) {
    return KEY.matcher(text).matches();
  }
}
