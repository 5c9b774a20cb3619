"""What a dance is: counts, clock, feet, steps, order, walls unrolled, JSON in and out."""
