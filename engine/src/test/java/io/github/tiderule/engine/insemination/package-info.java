@NullMarked
package io.github.tiderule.engine.insemination;

import org.jspecify.annotations.NullMarked;
