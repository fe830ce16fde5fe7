package io.github.tiderule.api.page.form;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problems;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** A female's form gives back what it was filled with, also what it does not ask. */
class FemaleFormTest {

  private static final Texts TEXTS = Texts.ofPages(Locale.ROOT);

  private static final String WHOLE =
      "{\"id\":\"juniper\",\"name\":\"Juniper\",\"bodyMassKg\":13.2,\"earlierCycles\":["
          + "{\"firstBloodOn\":\"2026-01-02\",\"ovulatedOn\":\"2026-01-13\"},"
          + "{\"firstBloodOn\":\"2026-07-01\",\"dioestrusOn\":\"2026-07-19\",\"whelpedOn\":"
          + "\"2026-09-14\",\"litterSize\":6,\"pregnant\":true}],\"lastWhelpedOn\":\"2026-09-14\","
          + "\"tests\":[]}";

  private static Node.Members whole() {
    return (Node.Members) NodeReader.read(WHOLE, new Problems()).orElseThrow();
  }

  @Test
  void savedUnchangedNothingIsLost() {
    Node.Members said = FemaleForm.read(FemaleForm.filled(whole()), whole(), TEXTS);
    assertThat(NodeText.of(Objects.requireNonNull(said)), is(WHOLE));
  }

  @Test
  void anEarlierSeasonNeedsItsFirstBlood() {
    Typed typed = FemaleForm.filled(whole());
    typed.fill("earlierCycles-0-firstBloodOn", "");
    assertThat(FemaleForm.read(typed, whole(), TEXTS), is(nullValue()));
    assertThat(
        Objects.requireNonNull(typed.fault("earlierCycles-0-firstBloodOn")).text(),
        is("The day is missing."));
  }
}
