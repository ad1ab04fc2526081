# What panels and their strings can do to someone, beside what batteries can.

cold-string =
    Panels give their highest voltage on a cold morning: it must stay below the controller's limit, or the controller is
    destroyed.
controller-order =
    Connect the battery to the controller first and the panels last, and disconnect the panels first: without a battery, a
    controller can put out their full voltage. Panels in daylight are live: cover them while you work.
monthly-means =
    These are monthly means of a model for panels in the open: single weeks bring much less, and so does any shade.

source-means = monthly means hide dark weeks
