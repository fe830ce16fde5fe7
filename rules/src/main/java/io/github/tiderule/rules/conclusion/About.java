package io.github.tiderule.rules.conclusion;

/** What a caution, a finding or a reason is about, where more hangs on it than its words. */
public enum About {
  /** What a dose holds; said on the sheet of the day too, and beside egg shares. */
  DOSE,
  /** Semen that is not to be used: nobody is told to inseminate with it. */
  UNUSABLE_DOSE,
  /** A day that is closed only until a test has been made. */
  TEST_FIRST,
  /** A day that meets several times fewer eggs than the best one: it is one to avoid. */
  FAR_BELOW_BEST,
  /** Whelping within a day or two: it leads the answer. */
  WHELPING_NEAR,
  /** A bitch too young to be bred: no day is planned. */
  TOO_YOUNG,
  /** Bleeding weeks after a whelping: a vet comes before any plan. */
  AFTER_WHELPING,
  /** What stands before a caesarean is booked. */
  CAESAREAN_BOOKING,
  /** Why she refused, and what to do about it. */
  REFUSAL,
  /** Anything else. */
  OTHER
}
