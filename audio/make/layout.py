"""
Numbers shared by training, export and the reference: the shape of the stream and of the outputs. How wide a net is stands in its weights;
HIDDEN is only what a new head gets.
"""
SAMPLE_RATE_HZ = 16000
FFT_SIZE, WINDOW_LENGTH, WINDOW_OFFSET, FRAME_HOP = 512, 400, 56, 160
MEL_BANDS, POWER_FLOOR, LOG_OFFSET = 32, 1.0, 2.0
HOP_SAMPLES, FRAMES_PER_HOP, SAMPLES_FOR_FIRST_HOP = 1280, 8, 1632
SKIP_FRAMES, RECEPTIVE_FRAMES = 4, 76
WINDOW_EMBEDDINGS, HIDDEN = 26, 192
WINDOW_FRAMES = RECEPTIVE_FRAMES + 8 * (WINDOW_EMBEDDINGS - 1)
WINDOW_SAMPLES = (WINDOW_FRAMES - 1) * FRAME_HOP + FFT_SIZE
SMOOTHING_HOPS, REFRACTORY_HOPS = 2, 19


def hann():
    """Periodic Hann window of 400 samples, centred in the 512-sample transform (samples 56..455): float64 [512]."""
    import numpy as np
    window = np.zeros(FFT_SIZE)
    phase = 2 * np.pi * np.arange(WINDOW_LENGTH) / WINDOW_LENGTH
    window[WINDOW_OFFSET:WINDOW_OFFSET + WINDOW_LENGTH] = 0.5 - 0.5 * np.cos(phase)
    return window
