/** How long whoever asks is ready to wait, asked wherever reckoning takes long. */
@NullMarked
package io.github.tiderule.engine.patience;

import org.jspecify.annotations.NullMarked;
