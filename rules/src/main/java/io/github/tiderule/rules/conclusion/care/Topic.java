package io.github.tiderule.rules.conclusion.care;

/** What the trade or its literature disagrees about. */
public enum Topic {
  FROZEN_TIMING("when thawed semen should meet the eggs"),
  EGG_LIFE("how long a ripe egg can be fertilised"),
  OVULATION_LEVEL("which progesterone goes with ovulation"),
  OVULATION_PROOF("what proves that she has ovulated"),
  BODY_MASS("whether body mass changes progesterone"),
  ASSAY_SCALE("how chemiluminescence reads beside radioimmunoassay"),
  SURGE_LENGTH("how long an LH test stays positive"),
  STANDING("where standing lies beside the LH peak"),
  DUE_DATE("what whelping is counted from"),
  AGE_LIMIT("up to which age a bitch is bred"),
  VOLUME("how much is inseminated into the vagina");

  private final String words;

  Topic(String words) {
    this.words = words;
  }

  /** The topic in words, as it stands after "about". */
  public String words() {
    return words;
  }
}
