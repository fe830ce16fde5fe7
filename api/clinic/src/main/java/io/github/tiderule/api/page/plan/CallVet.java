package io.github.tiderule.api.page.plan;

import io.github.tiderule.format.node.Node;
import org.jspecify.annotations.Nullable;

/**
 * Whom a kennel calls when a vet is needed.
 *
 * @param name absent where only the number is known
 * @param phone as it was typed
 */
public record CallVet(@Nullable String name, String phone) {

  /** Of a kennel; absent where it names no number. */
  public static @Nullable CallVet of(Node.Members kennel) {
    Node.Members vet = kennel.members("vet");
    String phone = vet == null ? null : vet.text("phone");
    return vet == null || phone == null ? null : new CallVet(vet.text("name"), phone);
  }

  /** The address a telephone takes, RFC 3966. */
  public String address() {
    return "tel:" + phone.replaceAll("[^+0-9]", "");
  }
}
