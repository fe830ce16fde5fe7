/**
 * Rules taken apart into conditions, so that why a rule spoke, or what kept it silent, can be told
 * condition by condition. Nothing here decides anything: the rule engine does, and a test holds
 * that both agree.
 */
@NullMarked
package io.github.tiderule.rules.condition;

import org.jspecify.annotations.NullMarked;
