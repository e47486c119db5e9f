package life

const batteryV = 12.8
