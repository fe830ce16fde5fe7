/**
 * The rule base: loading it, running one stage, and what a run concluded. The only package that
 * touches the rule engine.
 */
@NullMarked
package io.github.tiderule.rules;

import org.jspecify.annotations.NullMarked;
