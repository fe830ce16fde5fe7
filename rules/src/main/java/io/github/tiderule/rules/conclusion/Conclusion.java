package io.github.tiderule.rules.conclusion;

import java.util.List;

/** Something a rule concluded. */
public sealed interface Conclusion
    permits Level,
        Accepted,
        Held,
        Question,
        Discounted,
        Converted,
        Finding,
        SetAside,
        Awaited,
        DayReason,
        RouteInstead,
        TestDue,
        TestingDone,
        SameBlood,
        Caution,
        Position,
        Leaning,
        Milestone,
        RedFlag,
        CaesareanView,
        SheetLine,
        SheetFinding,
        Underdose,
        SeasonCheck {

  /** The observations it rests on, by id; may be empty. */
  List<String> observations();

  /** The conclusion in plain words, without a full stop. */
  String sentence();
}
