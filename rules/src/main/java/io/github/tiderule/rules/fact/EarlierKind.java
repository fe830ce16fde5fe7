package io.github.tiderule.rules.fact;

/** How an earlier season was no ordinary one. */
public enum EarlierKind implements Worded {
  /** It stopped before ovulation; the true season came weeks later. */
  BROKEN_OFF("broken-off"),
  /** Nobody saw it; its day of first blood is a guess. */
  SILENT("silent");

  private final String word;

  EarlierKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
