package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What became of her after a season, as a form. */
public final class OutcomeForm implements PartForm {

  private static final String PART = "outcome";
  private static final List<String> COUNTS = List.of("litterSize", "pupsBornAlive");

  private final Texts texts;

  private OutcomeForm(Texts texts) {
    this.texts = texts;
  }

  /** The form. */
  public static OutcomeForm of(Texts texts) {
    return new OutcomeForm(texts);
  }

  @Override
  public Node.@Nullable Members read(Typed typed, Node.Members was) {
    String pregnant = typed.value("pregnant");
    Part part = new Part();
    if (pregnant.equals("yes") || pregnant.equals("no")) {
      part.flag("pregnant", pregnant.equals("yes"));
    }
    LocalDate whelped = LocalTimes.day(typed, "whelpedOn", texts);
    part.text("whelpedOn", whelped == null ? null : whelped.toString());
    boolean litter = whelped != null;
    for (String name : COUNTS) {
      Amount pups = Amount.of(typed, name, false, texts);
      part.number(name, pups);
      litter = litter || (pups != null && !pups.digits().equals("0"));
    }
    if (pregnant.equals("no") && litter) {
      typed.refuse("pregnant", texts.say("fault.litter-contradicts"));
    }
    return typed.isGood() ? PartForm.with(was, PART, part) : null;
  }

  @Override
  public Typed filled(Node.Members season) {
    Typed typed = Typed.nothing();
    if (season.byKey().get(PART) instanceof Node.Members outcome) {
      outcome
          .byKey()
          .forEach(
              (name, node) -> {
                if (node instanceof Node.Flag flag) {
                  typed.fill(name, flag.value() ? "yes" : "no");
                } else if (node instanceof Node.Text text) {
                  typed.fill(name, text.value());
                } else if (node instanceof Node.Digits digits) {
                  typed.fill(name, digits.written());
                }
              });
    }
    return typed;
  }
}
