# Screws: sizes, lengths, what they hold.

size = #{ $gauge } x { $length }

source-longest = longest = layers + steel + free depth behind the last of them; a longer screw hits what is there
source-shortest = with no telling what is behind, the shortest screw in common stock that holds, and none longer
source-thread = a lining screw holds by 1/2 in of thread in the strip, or more
source-stock = screw lengths that stores stock
source-road = 2 g downward: its own weight and as much again from the road
source-even-share = a load spreads evenly over equal screws; count only those that are sure to bear
