@NullMarked
package io.github.tiderule.api.report;

import org.jspecify.annotations.NullMarked;
