export const texts = {
  title: 'Password',
  lead: 'Changing it ends every other sign-in of yours.',
  old: 'The password as it is',
  new: 'The new password',
  hint: 'At least 10 characters; a long sentence is best.',
  change: 'Change the password',
  changed: 'Changed. You are signed in here and nowhere else.',
  notChanged: 'Not changed',
  setTitle: 'New password',
  setLead: 'Your mechanic has made this link for you. It works once, and ends every sign-in of yours.',
  set: 'Set it and sign in',
  linkBroken: 'This link carries nothing to set a password with. Ask your mechanic for a new one.',
};
