package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.picture.QrPicture;
import io.github.tiderule.api.words.Texts;
import java.util.Locale;

/**
 * An address with a secret in it, shown once, to whoever made it.
 *
 * @param address to be copied
 * @param code the same as a picture to be read off the screen
 * @param local whether it leads nowhere but to this machine
 */
public record Handed(String address, String code, boolean local) {

  private static final String LOOPBACK =
      "https?://(?:127\\.[0-9.]+|localhost|\\[::1])(?::[0-9]+)?/.*";

  /** Of an address that begins with scheme and host. */
  public static Handed of(String address) {
    return new Handed(
        address,
        QrPicture.svg(address, Texts.ofPages(Locale.ROOT).say("address.code")),
        address.matches(LOOPBACK));
  }

  /** The same address for programs that are to subscribe to it. */
  public String webcal() {
    return address.replaceFirst("^https?:", "webcal:");
  }
}
